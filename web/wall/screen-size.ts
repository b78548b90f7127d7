import { keepChoice, keptChoice } from '../kept.ts';
import { between, settingsIn } from '../settings.ts';

/** How large this screen is and from how far away it is read. */
export interface ScreenSize {
  readonly diagonalIn: number | null;
  readonly distanceM: number | null;
}

/** A screen hangs where it hangs: what its address once said of it holds until the address says otherwise. */
export function screenSize(): ScreenSize {
  const { diagonalIn, distanceM } = settingsIn(location.search);
  return { diagonalIn: keptNumber('diagonal', diagonalIn, 3, 300), distanceM: keptNumber('distance', distanceM, 0.2, 60) };
}

function keptNumber(name: string, asked: number | null, least: number, most: number): number | null {
  if (asked === null) return between(keptChoice(name), least, most);
  keepChoice(name, String(asked));
  return asked;
}
