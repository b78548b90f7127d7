import type { MoundView, ThrowView } from '../facts/views.ts';
import type { HeadChange } from '../facts/wire.ts';
import { differencesBetween, withDifferences } from './difference.ts';

/** What turns one view of a mound into a later one of the same session. */
export interface ViewChange {
  readonly head: HeadChange;
  /** New or different throws. */
  readonly throws: readonly ThrowView[];
  /** Places of throws that left. */
  readonly gone: readonly number[];
  readonly unclaimed: readonly ThrowView[];
}

export function changeBetween(before: MoundView, after: MoundView): ViewChange {
  const { throws, unclaimed, ...head } = after;
  const { throws: earlier, unclaimed: _, ...known } = before;
  return { head: { ...differencesBetween(known, head), place: after.place }, ...throwsBetween(earlier, throws), unclaimed };
}

/** Both in the order of the log, so one walk along the two finds what is new, different or gone. */
function throwsBetween(before: readonly ThrowView[], after: readonly ThrowView[]): Pick<ViewChange, 'throws' | 'gone'> {
  const throws: ThrowView[] = [];
  const gone: number[] = [];
  let known = 0;
  for (const thrown of after) {
    for (; known < before.length && before[known]!.place < thrown.place; known += 1) gone.push(before[known]!.place);
    const stays = known < before.length && before[known]!.place === thrown.place;
    if (!stays || !same(before[known]!, thrown)) throws.push(thrown);
    if (stays) known += 1;
  }
  for (; known < before.length; known += 1) gone.push(before[known]!.place);
  return { throws, gone };
}

/** Most throws are the very same as before. */
function same(before: ThrowView, after: ThrowView): boolean {
  return before === after || JSON.stringify(before) === JSON.stringify(after);
}

/** `applyChange(before, changeBetween(before, after))` equals `after`. Throws stay in the order of the log. */
export function applyChange(view: MoundView, change: ViewChange): MoundView {
  const byPlace = new Map(view.throws.map((thrown) => [thrown.place, thrown]));
  for (const place of change.gone) byPlace.delete(place);
  for (const thrown of change.throws) byPlace.set(thrown.place, thrown);
  return { ...withDifferences(view, change.head), throws: [...byPlace.values()].sort((a, b) => a.place - b.place), unclaimed: change.unclaimed };
}
