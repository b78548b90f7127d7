import { createEffect, createSignal, onCleanup, type Accessor } from 'solid-js';

/** Whether a screen is kept from going dark; `cannot`: this browser, or this connection, has no way; `refused`: it has, and did not. */
export type Awake = 'awake' | 'not-asked' | 'cannot' | 'refused';

/** Keeps the screen from going dark while it is wanted and in front; browsers take the hold back whenever the page is hidden. */
export function keepAwake(wanted: Accessor<boolean>): Accessor<Awake> {
  const locks = (navigator as Partial<Navigator>).wakeLock;
  const [awake, setAwake] = createSignal<Awake>(locks === undefined ? 'cannot' : 'not-asked');
  if (locks === undefined) return awake;
  // Told again although it is the same: a browser may have let go of the hold meanwhile, so it is asked anew.
  const [visible, setVisible] = createSignal(!document.hidden, { equals: false });
  const look = (): void => void setVisible(!document.hidden);
  document.addEventListener('visibilitychange', look);
  onCleanup(() => document.removeEventListener('visibilitychange', look));
  createEffect(() => {
    if (!wanted() || !visible()) return void setAwake('not-asked');
    const held = locks.request('screen').then((lock) => (setAwake('awake'), lock), () => (setAwake('refused'), null));
    onCleanup(() => void held.then((lock) => lock?.release()));
  });
  return awake;
}
