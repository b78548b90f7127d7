import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import { nowMs } from '../live/clock.ts';

/** House rule: a Wall rests when its mounds said nothing for so long. */
const REST_AFTER_MINUTES = 20;

/** Since when this screen rests; null while it does not. */
export type Resting = { readonly sinceMs: number } | null;

/**
 * A Wall that shows the same for long wears its panel and tells nobody anything: it rests, and wakes with the next fact.
 * @param place what changes with every fact of the mounds shown
 * @param minutes another length of time until it rests; 0 never rests
 */
export function createRest(place: Accessor<string>, minutes: number | null): Accessor<Resting> {
  const afterMs = (minutes ?? REST_AFTER_MINUTES) * 60_000;
  const [resting, setResting] = createSignal<Resting>(null);
  if (afterMs === 0) return resting;
  let falling: ReturnType<typeof setTimeout> | undefined;
  createEffect(on(place, () => {
    clearTimeout(falling);
    setResting(null);
    const sinceMs = nowMs();
    falling = setTimeout(() => setResting({ sinceMs }), afterMs);
  }));
  onCleanup(() => clearTimeout(falling));
  return resting;
}
