import type { MoundHead, MoundView, ThrowView } from '../facts/views.ts';

/** What turns one view of a mound into a later one of the same session. */
export interface ViewChange {
  readonly head: MoundHead;
  /** New or different throws. */
  readonly throws: readonly ThrowView[];
  /** Places of throws that left. */
  readonly gone: readonly number[];
  readonly unclaimed: readonly ThrowView[];
}

export function changeBetween(before: MoundView, after: MoundView): ViewChange {
  const { throws, unclaimed, ...head } = after;
  const known = new Map(before.throws.map((thrown) => [thrown.place, JSON.stringify(thrown)]));
  const staying = new Set(throws.map(({ place }) => place));
  return {
    head,
    throws: throws.filter((thrown) => known.get(thrown.place) !== JSON.stringify(thrown)),
    gone: before.throws.filter(({ place }) => !staying.has(place)).map(({ place }) => place),
    unclaimed,
  };
}

/** `applyChange(before, changeBetween(before, after))` equals `after`. Throws stay in the order of the log. */
export function applyChange(view: MoundView, change: ViewChange): MoundView {
  const byPlace = new Map(view.throws.map((thrown) => [thrown.place, thrown]));
  for (const place of change.gone) byPlace.delete(place);
  for (const thrown of change.throws) byPlace.set(thrown.place, thrown);
  return { ...change.head, throws: [...byPlace.values()].sort((a, b) => a.place - b.place), unclaimed: change.unclaimed };
}
