import { createSignal, type Accessor } from 'solid-js';
import { settingsIn, withSetting } from '../settings.ts';

/** Whether the numbers of the last throw are asked for; remembered in the address, so that a link restores it. */
export interface NumbersRequest {
  readonly asked: Accessor<boolean>;
  readonly toggle: () => void;
  /** Takes N; tells whether the key was it. */
  readonly takeKey: (key: string) => boolean;
}

/** The request as the address has it at first. */
export function createNumbersRequest(): NumbersRequest {
  const [asked, setAsked] = createSignal(settingsIn(location.search).numbers);
  const toggle = (): void => {
    setAsked(!asked());
    history.replaceState(null, '', `${location.pathname}${withSetting(location.search, 'numbers', asked() ? '1' : null)}`);
  };
  return {
    asked, toggle,
    takeKey: (key) => {
      if (key.toLowerCase() !== 'n') return false;
      toggle();
      return true;
    },
  };
}
