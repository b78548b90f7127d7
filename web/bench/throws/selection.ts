import { createMemo, createSignal, type Accessor } from 'solid-js';
import type { ThrowView } from '../../../core/facts/views.ts';

/** Which throws are chosen. A throw that left the session, here or at another tablet, is chosen no longer. */
export interface Selection {
  readonly chosen: Accessor<readonly ThrowView[]>;
  readonly places: Accessor<number[]>;
  readonly has: (place: number) => boolean;
  readonly toggle: (place: number) => void;
  /** Chooses everything thrown since the oldest chosen one: the run that the next arm threw before the tablet was touched. */
  readonly allSince: () => void;
  readonly clear: () => void;
}

export function createSelection(throws: Accessor<readonly ThrowView[]>): Selection {
  const [picked, setPicked] = createSignal<ReadonlySet<number>>(new Set());
  const chosen = createMemo(() => throws().filter(({ place }) => picked().has(place)));
  const places = createMemo(() => chosen().map(({ place }) => place));
  return {
    chosen,
    places,
    has: (place) => picked().has(place),
    toggle: (place) => setPicked((before) => {
      const after = new Set(before);
      if (!after.delete(place)) after.add(place);
      return after;
    }),
    allSince: () => {
      const oldest = places()[0];
      if (oldest !== undefined) setPicked(new Set(throws().map(({ place }) => place).filter((place) => place >= oldest)));
    },
    clear: () => setPicked(new Set<number>()),
  };
}
