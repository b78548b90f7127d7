import { describe, expect, it } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import { objection } from '../../../core/session/admit.ts';
import { allTaken, newestBaseline } from '../../../core/session/compared.ts';
import { sessionIn } from '../../../core/session/ledger.ts';
import { inchesToM } from '../../../core/units/convert.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const trial = (session: string, words: string): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
const comparison = (session: string, k: number, baseline = 1): CoachSays => ({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline });

function evening(session = 's1', story = new Story()): Story {
  fiveFastballs(story.open(session, 'ada').intent(session, 'four-seam'));
  story.say(trial(session, 'through the glove')).throw(82, 8, -10);
  story.say(trial(session, 'over the top')).throw(81, 6, -11);
  return story;
}
const DAY = { session: 's1', a: 'A', b: 'B', baseline: 1 };
const takenIn = (story: Story, days = [DAY]) => allTaken({ days, stage: 'mound' }, () => story.ledger());

describe('the throws that a comparison takes', () => {
  it('are those of its two trials in its stage, held against the baseline that it fixed', () => {
    const [a, b, ...more] = takenIn(evening());
    expect(more).toEqual([]);
    expect([a!.trial, b!.trial]).toEqual(['a', 'b']);
    expect(a!.verticalM).toBeCloseTo(inchesToM(8 - 16), 9);
    expect(b!.armSideM).toBeCloseTo(inchesToM(11 - 6), 9);
  });

  it('stay as they were when a new baseline moves the fastball', () => {
    const story = evening();
    const before = takenIn(story);
    story.intent('s1', 'four-seam');
    for (let n = 0; n < 5; n += 1) story.throw(85, 10, -6);
    story.say({ kind: 'baseline-renewed', session: 's1', stage: 'mound' });
    const ledger = story.ledger();
    expect(takenIn(story)).toEqual(before);
    expect(newestBaseline(ledger, sessionIn(ledger, 's1')!, 'mound')).toBe(2);
    expect(takenIn(story, [{ ...DAY, baseline: 2 }])[0]!.verticalM).toBeCloseTo(inchesToM(8 - 10), 9);
  });

  it('hold excluded ones with their reason, and none of a stage or baseline that is not theirs', () => {
    const story = evening();
    const place = story.facts.at(-1)!.place;
    story.say({ kind: 'throws-excluded', session: 's1', places: [place], reason: 'slipped' });
    expect(takenIn(story).map(({ excluded, because }) => [excluded, because])).toEqual([[false, null], [true, 'slipped']]);
    expect(allTaken({ days: [DAY], stage: 'hitters' }, () => story.ledger())).toEqual([]);
    expect(takenIn(story, [{ ...DAY, baseline: 9 }])).toEqual([]);
  });

  it('of two mounds are told apart although their logs count alike', () => {
    const [north, south] = [evening().ledger(), evening('s2').ledger()];
    const taken = allTaken({ days: [DAY, { ...DAY, session: 's2' }], stage: 'mound' }, (session) => (session === 's1' ? north : south));
    expect(taken.map(({ place }) => place)).toEqual([1, 2, 3, 4]);
    expect(taken.map(({ session }) => session).toSorted()).toEqual(['s1', 's1', 's2', 's2']);
  });
});

describe('the number of a comparison', () => {
  it('counts one that was opened in a closed session after the present one had begun', () => {
    const story = evening('s2', evening().say({ kind: 'session-closed', session: 's1' }));
    story.say(comparison('s1', 1));
    expect(objection(story.ledger(), comparison('s2', 1, 2))).toMatchObject({ code: 'not-the-next-number' });
    expect(objection(story.ledger(), comparison('s2', 2, 2))).toBeNull();
  });
});
