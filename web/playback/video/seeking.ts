import { middleOf, type FrameTimes } from './frames.ts';

/** A frame that is wanted, and where on the clock of the file it was last asked for. */
export interface Seeking {
  readonly frame: number;
  readonly beginsS: number;
  readonly atS: number;
  /** Here an earlier one was shown, or none can be. */
  readonly afterS: number;
  /** Here a later one was shown; null where none was yet. */
  readonly beforeS: number | null;
  readonly tries: number;
}

const MOST_TRIES = 24;
/** Less than a frame of any camera: what was told in between was of the search before. */
const NOTHING_BETWEEN_S = 5e-4;

/** Asks for the middle of a frame. */
export function seekingOf(times: FrameTimes, frame: number): Seeking {
  const beginsS = times[frame] ?? 0;
  return { frame, beginsS, atS: middleOf(times, frame), afterS: beginsS, beforeS: null, tries: 0 };
}

/**
 * Where to ask next when another frame was shown; null once it is the right one, or does not come. Browsers guess how long a frame
 * lasts, and show the first that has not ended: where frames are unevenly far, one may be found only well behind its own time, when
 * by the file several others have begun. So it is asked for later and later until it or a later one comes, and then in between.
 */
export function soughtAgain(seeking: Seeking, shown: number): Seeking | null {
  if (shown === seeking.frame || seeking.tries >= MOST_TRIES) return null;
  const { beginsS, atS } = seeking;
  const tries = seeking.tries + 1;
  const [narrowed, beforeS] = shown < seeking.frame ? [atS, seeking.beforeS] : [seeking.afterS, atS];
  if (beforeS === null) return { ...seeking, tries, afterS: atS, atS: beginsS + 2 * (atS - beginsS) };
  const afterS = beforeS - narrowed < NOTHING_BETWEEN_S ? beginsS : narrowed;
  return { ...seeking, tries, afterS, beforeS, atS: (afterS + beforeS) / 2 };
}
