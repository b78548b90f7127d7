import { createSignal, type Accessor } from 'solid-js';
import { settingsIn, withSetting } from '../../settings.ts';
import { afterAsking, askedByKey, type Asked } from './asked.ts';

/** What a viewer asked for beyond the main view; remembered in the address, so that a link restores it. */
export interface Requests {
  readonly windows: Accessor<boolean>;
  readonly picture: Accessor<Asked | null>;
  readonly toggleWindows: () => void;
  readonly ask: (picture: Asked) => void;
  /** Takes W, S, G and P; tells whether the key was one of them. */
  readonly takeKey: (key: string) => boolean;
}

/** The requests of one screen, as its address has them at first. */
export function createRequests(): Requests {
  const [windows, setWindows] = createSignal(settingsIn(location.search).windows);
  const [picture, setPicture] = createSignal(settingsIn(location.search).picture);
  const remember = (name: string, value: string | null): void => history.replaceState(null, '', `${location.pathname}${withSetting(location.search, name, value)}`);
  const toggleWindows = (): void => {
    setWindows(!windows());
    remember('windows', windows() ? '1' : null);
  };
  const show = (next: Asked | null): void => {
    setPicture(next);
    remember('picture', next);
  };
  return {
    windows, picture, toggleWindows,
    ask: (asked) => show(afterAsking(asked, picture())),
    takeKey: (key) => {
      if (key.toLowerCase() === 'w') {
        toggleWindows();
        return true;
      }
      const next = askedByKey(key, picture());
      if (next !== undefined) show(next);
      return next !== undefined;
    },
  };
}
