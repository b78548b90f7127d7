import type { MoundView, ThrowView } from '../facts/views.ts';
import type { HeadChange, ThrowChange } from '../facts/wire.ts';
import { differencesBetween, withDifferences } from './difference.ts';

/** What turns one view of a mound into a later one of the same session. */
export interface ViewChange {
  readonly head: HeadChange;
  /** New or different throws: of each what differs from the one before it, of the first what differs from the newest that was known. */
  readonly throws: readonly ThrowChange[];
  /** Places of throws that left. */
  readonly gone: readonly number[];
  readonly unclaimed: readonly ThrowView[];
}

export function changeBetween(before: MoundView, after: MoundView): ViewChange {
  const { throws, unclaimed, ...head } = after;
  const { throws: earlier, unclaimed: _, ...known } = before;
  const { changed, gone } = throwsBetween(earlier, throws);
  return { head: { ...differencesBetween(known, head), place: after.place }, throws: changed.map((thrown, index) => differencesBetween(changed[index - 1] ?? newestOf(before), thrown)), gone, unclaimed };
}

function newestOf({ throws }: MoundView): ThrowView | object {
  return throws.at(-1) ?? {};
}

/** Both in the order of the log, so one walk along the two finds what is new, different or gone. */
function throwsBetween(before: readonly ThrowView[], after: readonly ThrowView[]): { readonly changed: readonly ThrowView[]; readonly gone: readonly number[] } {
  const changed: ThrowView[] = [];
  const gone: number[] = [];
  let known = 0;
  for (const thrown of after) {
    for (; known < before.length && before[known]!.place < thrown.place; known += 1) gone.push(before[known]!.place);
    const stays = known < before.length && before[known]!.place === thrown.place;
    if (!stays || !same(before[known]!, thrown)) changed.push(thrown);
    if (stays) known += 1;
  }
  for (; known < before.length; known += 1) gone.push(before[known]!.place);
  return { changed, gone };
}

/** Most throws are the very same as before. */
function same(before: ThrowView, after: ThrowView): boolean {
  return before === after || JSON.stringify(before) === JSON.stringify(after);
}

/** `applyChange(before, changeBetween(before, after))` equals `after`. Throws stay in the order of the log. */
export function applyChange(view: MoundView, change: ViewChange): MoundView {
  const byPlace = new Map(view.throws.map((thrown) => [thrown.place, thrown]));
  for (const place of change.gone) byPlace.delete(place);
  let thrown = newestOf(view);
  for (const difference of change.throws) {
    thrown = withDifferences(thrown, difference);
    byPlace.set((thrown as ThrowView).place, thrown as ThrowView);
  }
  return { ...withDifferences(view, change.head), throws: [...byPlace.values()].sort((a, b) => a.place - b.place), unclaimed: change.unclaimed };
}
