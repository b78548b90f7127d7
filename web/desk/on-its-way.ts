import { createSignal, type Accessor } from 'solid-js';

interface Way<T> {
  readonly value: T;
  /** Where the log holds it; null while it is under the finger or has not been answered. */
  readonly place: number | null;
}

/** Something the coach has just set: shown until the server's own view holds it, or until it was refused. */
export interface OnItsWay<T> {
  readonly value: Accessor<T | null>;
  /** Shows it without saying it: a zone that is still under the finger. */
  readonly hold: (value: T) => void;
  /** Shows it while it is said; gives the place in the log, null when it was refused. */
  readonly send: (value: T, saying: Promise<number | null>) => Promise<number | null>;
}

/** @param seen the newest place that the view on this screen holds */
export function createOnItsWay<T>(seen: Accessor<number>): OnItsWay<T> {
  const [way, setWay] = createSignal<Way<T> | null>(null);
  return {
    value: () => {
      const now = way();
      return now === null || (now.place !== null && seen() >= now.place) ? null : now.value;
    },
    hold: (value) => setWay({ value, place: null }),
    async send(value, saying) {
      const mine: Way<T> = { value, place: null };
      setWay(mine);
      const place = await saying;
      // What was set after this one shows instead of it.
      setWay((now) => (now !== mine ? now : place === null ? null : { value, place }));
      return place;
    },
  };
}
