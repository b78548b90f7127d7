import { INTENTS } from '../../../core/facts/vocabulary.ts';
import { LIST_KEY } from '../../keys/listen.ts';
import type { OneTap } from '../dock/one-tap.ts';
import type { OpenSheet, Sheet } from '../dock/open-sheet.ts';
import type { Place } from '../places.ts';
import { toggleSun } from '../screen/sun-button.tsx';

/** What the keys of Bench act on. */
interface Keyed {
  readonly oneTap: OneTap;
  readonly sheet: OpenSheet;
  readonly places: readonly Place[];
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  readonly onList: () => void;
}

const SHEET_KEYS: Readonly<Record<string, Sheet>> = { t: 'trial', l: 'throw', a: 'arm', n: 'note', u: 'acts' };

/** Does what a key is for; tells whether it was for anything. */
export function takeKey(key: string, keyed: Keyed): boolean {
  const { oneTap, sheet } = keyed;
  const intent = /^[1-9]$/.test(key) ? INTENTS[Number(key) - 1] : undefined;
  const opened = SHEET_KEYS[key.toLowerCase()];
  if (intent !== undefined) return done(() => oneTap.intent(intent));
  if (opened !== undefined) return done(() => { if (opened !== 'trial' || oneTap.mayGoOn()) sheet.toggle(opened); });
  switch (key.toLowerCase()) {
    case 'b': return done(oneTap.goToBlock);
    case 'g': return done(oneTap.beginSame);
    case 'm': return done(oneTap.passOn);
    case 'z': return done(oneTap.undo);
    case 'k': return done(oneTap.bookmark);
    case 's': return done(toggleSun);
    case LIST_KEY: return done(keyed.onList);
    case 'arrowleft': return done(() => step(keyed, -1));
    case 'arrowright': return done(() => step(keyed, 1));
    case 'escape': return sheet.sheet() !== null && done(sheet.close);
    default: return false;
  }
}

function done(act: () => void): true {
  act();
  return true;
}

function step({ places, place, onPlace }: Keyed, by: number): void {
  onPlace(places[(places.indexOf(place) + by + places.length) % places.length]!);
}
