import { createSignal, type Accessor } from 'solid-js';
import { createAskedFor, rememberSetting, type AskedFor } from '../../asked-for.ts';
import { settingsIn } from '../../settings.ts';
import { afterAsking, askedByKey, type Asked } from './asked.ts';

/** What a viewer asked for beyond the main view; remembered in the address, so that a link restores it. */
export interface Requests {
  readonly windows: AskedFor;
  readonly picture: Accessor<Asked | null>;
  readonly ask: (picture: Asked) => void;
  /** Takes W, S, G and P; tells whether the key was one of them. */
  readonly takeKey: (key: string) => boolean;
}

/** The requests of one screen, as its address has them at first. */
export function createRequests(): Requests {
  const { windows: windowsAtFirst, picture: pictureAtFirst } = settingsIn(location.search);
  const windows = createAskedFor('windows', '1', 'w', windowsAtFirst);
  const [picture, setPicture] = createSignal(pictureAtFirst);
  const show = (next: Asked | null): void => {
    setPicture(next);
    rememberSetting('picture', next);
  };
  return {
    windows, picture,
    ask: (asked) => show(afterAsking(asked, picture())),
    takeKey: (key) => {
      if (windows.takeKey(key)) return true;
      const next = askedByKey(key, picture());
      if (next !== undefined) show(next);
      return next !== undefined;
    },
  };
}
