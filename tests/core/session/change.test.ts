import { expect, test } from 'vitest';
import type { MoundView, ThrowView } from '../../../core/facts/views.ts';
import { applyChange, changeBetween } from '../../../core/session/change.ts';
import { moundView } from '../../../core/session/view.ts';
import { Story } from './story.ts';

/** A view of a mound with these throws and no others. */
function viewOf(place: number, ...throws: readonly Partial<ThrowView>[]): MoundView {
  return { ...EMPTY, place, throws: throws.map((one) => ({ ...THROW, ...one })) };
}

const STORY = new Story().open('s1', 'ada');
STORY.throw(82, 8, -10);
const [EMPTY, THROW] = [moundView(new Story().ledger(), null), moundView(STORY.ledger(), null).throws[0]!];
const sent = (before: MoundView, after: MoundView): MoundView => applyChange(before, JSON.parse(JSON.stringify(changeBetween(before, after))) as ReturnType<typeof changeBetween>);

test('of throws that came together each is sent as what differs from the one before it', () => {
  const before = viewOf(4, { place: 3, number: 1 });
  const after = viewOf(6, { place: 3, number: 1 }, { place: 5, number: 2, speedMps: 36.5 }, { place: 6, number: 3, speedMps: 36.5, trial: 'A' });
  expect(changeBetween(before, after).throws).toEqual([{ place: 5, number: 2, speedMps: 36.5 }, { place: 6, number: 3, trial: 'A' }]);
  expect(sent(before, after)).toEqual(after);
});

test('the first throw of all is sent whole', () => {
  const [before, after] = [viewOf(2), viewOf(3, { place: 3, number: 1 })];
  expect(Object.keys(changeBetween(before, after).throws[0]!)).toEqual(Object.keys(after.throws[0]!));
  expect(sent(before, after)).toEqual(after);
});

test('a throw that changed among others, one that left and one that came at once become what they are', () => {
  const before = viewOf(9, { place: 3 }, { place: 5, problem: 'a-lie' }, { place: 7, speedMps: 36.5 });
  const after = viewOf(11, { place: 3, excluded: 'slipped' }, { place: 7, speedMps: 'problem' }, { place: 11, separation: null });
  expect(sent(before, after)).toEqual(after);
});
