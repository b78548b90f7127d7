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
  let sinceMs = nowMs();
  let spoke = false;
  let falling: ReturnType<typeof setTimeout> | undefined;
  // No timer is set anew at each throw: one that ends too early waits for the rest of the time.
  const fall = (inMs: number): void => {
    falling = setTimeout(() => {
      falling = undefined;
      if (!spoke) return void setResting({ sinceMs });
      spoke = false;
      const quietMs = nowMs() - sinceMs;
      fall(quietMs >= 0 && quietMs <= inMs ? afterMs - quietMs : afterMs);
    }, inMs);
  };
  createEffect(on(place, () => {
    sinceMs = nowMs();
    setResting(null);
    if (falling === undefined) fall(afterMs);
    else spoke = true;
  }));
  onCleanup(() => clearTimeout(falling));
  return resting;
}
