import { createEffect, on, onCleanup, type Accessor } from 'solid-js';

/** Browsers allow an address to be rewritten only so often: not at every step of a hand that scrubs. */
const RESTED_MS = 250;

/** Does something with a value once it has not changed for a moment. */
export function onceItRests<T>(value: Accessor<T>, act: (value: T) => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(on(value, (now) => {
    clearTimeout(timer);
    timer = setTimeout(() => act(now), RESTED_MS);
  }, { defer: true }));
  onCleanup(() => clearTimeout(timer));
}
