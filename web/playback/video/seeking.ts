import { middleOf, type FrameTimes } from './frames.ts';

/** A frame that is wanted, and where on the clock of the file it was last asked for. */
export interface Seeking {
  readonly frame: number;
  readonly atS: number;
  readonly afterS: number;
  readonly beforeS: number;
  readonly tries: number;
}

/** Halved so often a second is less than a frame of any camera. */
const MOST_TRIES = 12;

/** Asks for the middle of a frame. Browsers guess how long a frame lasts where its neighbours are unevenly far: it may be found up to a frame away. */
export function seekingOf(times: FrameTimes, frame: number): Seeking {
  return { frame, atS: middleOf(times, frame), afterS: times[frame - 1] ?? 0, beforeS: middleOf(times, frame + 1), tries: 0 };
}

/** Where to ask next when another frame was shown; null once it is the right one, or does not come. */
export function soughtAgain(seeking: Seeking, shown: number): Seeking | null {
  if (shown === seeking.frame || seeking.tries >= MOST_TRIES) return null;
  const { atS } = seeking;
  const [afterS, beforeS] = shown < seeking.frame ? [atS, seeking.beforeS] : [seeking.afterS, atS];
  return { ...seeking, afterS, beforeS, atS: (afterS + beforeS) / 2, tries: seeking.tries + 1 };
}
