import { createSignal, type Accessor } from 'solid-js';
import { withSetting } from './settings.ts';

/** Something that a viewer may ask for and put away again; remembered in the address, so that a link restores it. */
export interface AskedFor {
  readonly asked: Accessor<boolean>;
  readonly toggle: () => void;
  /** Takes its key; tells whether the key was it. */
  readonly takeKey: (key: string) => boolean;
}

/** @param value what its setting says in the address while it is asked for */
export function createAskedFor(setting: string, value: string, ownKey: string, atFirst: boolean): AskedFor {
  const [asked, setAsked] = createSignal(atFirst);
  const toggle = (): void => {
    setAsked(!asked());
    rememberSetting(setting, asked() ? value : null);
  };
  return {
    asked, toggle,
    takeKey: (key) => {
      if (key.toLowerCase() !== ownKey) return false;
      toggle();
      return true;
    },
  };
}

/** Writes a setting into the address of this screen, in place of what stood there; null takes it out. */
export function rememberSetting(name: string, value: string | null): void {
  const search = withSetting(location.search, name, value);
  if (search !== location.search) history.replaceState(null, '', `${location.pathname}${search}`);
}
