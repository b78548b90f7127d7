import { createEffect, on, onCleanup, type Accessor } from 'solid-js';

/** Browsers allow an address to be rewritten only so often: not at every step of a hand that scrubs. */
const RESTED_MS = 250;

/** Does something with a value once it has not changed for a moment. One timer looks, however often the value changes meanwhile. */
export function onceItRests<T>(value: Accessor<T>, act: (value: T) => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  interface Changed { readonly value: T }
  let newest = null as Changed | null;
  let looked = null as Changed | null;
  const look = (): void => {
    timer = undefined;
    if (newest === null) return;
    if (newest !== looked) return wait();
    act(newest.value);
  };
  const wait = (): void => {
    looked = newest;
    timer = setTimeout(look, RESTED_MS);
  };
  createEffect(on(value, (now) => {
    newest = { value: now };
    if (timer === undefined) wait();
  }, { defer: true }));
  onCleanup(() => clearTimeout(timer));
}
