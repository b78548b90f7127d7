import { createMemo, createSignal, type Accessor } from 'solid-js';
import { rememberSetting } from '../../asked-for.ts';
import { placeAskedFor } from '../place-in-address.ts';
import type { RecordingModel } from '../recording-model.ts';
import type { Side } from './pair-of.ts';

/** The throw that others are held against; remembered in the address, so that a link restores the comparison. */
export interface Held {
  /** Its place in the log. */
  readonly place: Accessor<number | null>;
  readonly side: Accessor<Side | null>;
  /** Holds the throw that is shown, or lets go of what is held. */
  readonly toggle: () => void;
}

export function createHeld(model: RecordingModel): Held {
  const [place, setPlace] = createSignal(placeAskedFor('against'));
  const side = createMemo((): Side | null => {
    const at = place();
    const thrown = at === null ? undefined : model.throws().find((one) => one.place === at);
    const { session } = model.view();
    return thrown === undefined || session === null ? null : { thrown, session };
  });
  return {
    side,
    place: () => side()?.thrown.place ?? null,
    toggle: () => {
      setPlace(side() === null ? model.thrown()?.place ?? null : null);
      rememberSetting('against', place() === null ? null : String(place()));
    },
  };
}
