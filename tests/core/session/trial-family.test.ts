import { expect, it } from 'vitest';
import { coachSaysSchema } from '../../../core/facts/coach.ts';
import { moundView } from '../../../core/session/view.ts';
import { Story } from './story.ts';

it('a trial keeps the family that was said at its beginning, also when it is resumed, and one of which nobody said has none', () => {
  const story = new Story().open('s1', 'ada')
    .say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null, family: 'turnover' })
    .say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null })
    .say({ kind: 'trial-resumed', session: 's1', trial: 'A' });
  const { session } = moundView(story.ledger(), null);
  expect(session?.trials.map(({ family }) => family)).toEqual(['turnover', undefined]);
  expect(session?.trial).toMatchObject({ letter: 'A', family: 'turnover' });
});

it('a family that nobody knows is refused', () => {
  const begun = { kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null };
  expect(coachSaysSchema.safeParse({ ...begun, family: 'split' }).success).toBe(true);
  expect(coachSaysSchema.safeParse({ ...begun, family: 'magic' }).success).toBe(false);
});
