import { expect, it } from 'vitest';
import { objection } from '../../../core/session/admit.ts';
import { moundView } from '../../../core/session/view.ts';
import { Story } from './story.ts';

const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
const [first, second] = [story.throw(90, 16, -6), story.throw(90.4, 16.2, -6.1)];
const marked = (from: Story): number[] => moundView(from.ledger(), 's1').throws.filter(({ bookmarked }) => bookmarked).map(({ place }) => place);

it('a bookmark stays on its throw until it is taken off, in a closed session too', () => {
  expect(marked(story)).toEqual([]);
  story.say({ kind: 'throw-bookmarked', session: 's1', place: second, on: true });
  expect(marked(story)).toEqual([second]);
  story.say({ kind: 'session-closed', session: 's1' });
  const later = { kind: 'throw-bookmarked', session: 's1', place: first, on: true } as const;
  expect(objection(story.ledger(), later)).toBeNull();
  story.later(48).say(later).say({ kind: 'throw-bookmarked', session: 's1', place: second, on: false });
  expect(marked(story)).toEqual([first]);
});

it('only a throw of the session can be bookmarked', () => {
  expect(objection(story.ledger(), { kind: 'throw-bookmarked', session: 's1', place: 1, on: true })).toMatchObject({ code: 'not-of-this-session', path: 'places.0' });
  story.open('s2', 'ilse');
  expect(objection(story.ledger(), { kind: 'throw-bookmarked', session: 's2', place: first, on: true })).toMatchObject({ code: 'not-of-this-session' });
});
