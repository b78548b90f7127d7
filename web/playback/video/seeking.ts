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
  readonly stepS: number;
  readonly tries: number;
}

const MOST_TRIES = 24;
/** Less than a frame of any camera: what was told in between was of the search before. */
const NOTHING_BETWEEN_S = 5e-4;

/** Asks for the middle of a frame. */
export function seekingOf(times: FrameTimes, frame: number): Seeking {
  const [beginsS, atS] = [times[frame] ?? 0, middleOf(times, frame)];
  return { frame, beginsS, atS, afterS: beginsS, beforeS: null, stepS: Math.max(NOTHING_BETWEEN_S, atS - beginsS), tries: 0 };
}

/**
 * Where to ask next when another frame was shown; null once it is the right one, or does not come. Browsers guess how long a frame
 * lasts, and show the first that has not ended: where frames are unevenly far, one may be found only well behind its own time, when
 * by the file several others have begun. So it is asked for later and later until it or a later one comes, and then in between.
 */
export function soughtAgain(seeking: Seeking, shown: number): Seeking | null {
  if (shown === seeking.frame || seeking.tries >= MOST_TRIES) return null;
  const [tries, isEarly] = [seeking.tries + 1, shown < seeking.frame];
  if (isEarly && seeking.beforeS === null) return { ...seeking, tries, afterS: seeking.atS, atS: seeking.atS + seeking.stepS, stepS: seeking.stepS * 2 };
  const beforeS = isEarly ? seeking.beforeS! : seeking.atS;
  const narrowed = isEarly ? seeking.atS : seeking.afterS;
  const afterS = beforeS - narrowed < NOTHING_BETWEEN_S ? seeking.beginsS : narrowed;
  return { ...seeking, tries, afterS, beforeS, atS: (afterS + beforeS) / 2 };
}
