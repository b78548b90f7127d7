import { inchesToM } from '../../core/units/convert.ts';

/** Height of a capital letter in Hanken Grotesk as a share of the font size, measured on its H. */
export const CAPITAL_SHARE = 0.7;
const SCREEN_DIAGONAL_IN = 55;
const SCREEN_DISTANCE_M = 6;
const LEAST_TEXT_ARC_MINUTES = 12;
const LEAST_LEAD_ARC_MINUTES = 30;
/** Narrower than this a screen is held in a hand, unless its size and distance are told. */
const HAND_WIDTH_PX = 700;

/** How many text sizes across and down a picture needs for all of it, for less of it, and for the least that is worth showing. */
const FULL_ACROSS = 34;
const PLANE_BESIDE_ACROSS = 19;
const ALL_WORDS_DOWN = 19;
const LEAST = { across: 17, down: 9.5 } as const;

/** How much of the picture its room holds. */
type Holds = 'all' | 'no-rail' | 'plane-above' | 'words-alone';

export interface WallSizes {
  /** Size of every text. */
  readonly textPx: number;
  /** Size of the last throw's words. */
  readonly leadPx: number;
  /** One column, top to bottom. */
  readonly stacked: boolean;
  readonly holds: Holds;
  /** Whether there is height for the last throw's place alone. */
  readonly low: boolean;
  /** Where even the least does not fit at that size: from how near it can be read instead, in metres; null where it fits. */
  readonly readableWithinM: number | null;
}

/** Of a screen, or of the part of it that a picture has. */
interface Extent {
  readonly width: number;
  readonly height: number;
}

/**
 * Font sizes that are read from where the viewer stands: 30 minutes of arc in capital height for the last throw's words, 12 for all else.
 * @param room of the picture
 * @param screen that the diagonal is of
 */
export function wallSizes(room: Extent, asked: { readonly diagonalIn: number | null; readonly distanceM: number | null }, screen: Extent = room): WallSizes {
  if (screen.width < HAND_WIDTH_PX && asked.diagonalIn === null && asked.distanceM === null) return { textPx: 17, leadPx: 42, stacked: true, holds: 'all', low: false, readableWithinM: null };
  const pxPerM = Math.hypot(screen.width, screen.height) / inchesToM(asked.diagonalIn ?? SCREEN_DIAGONAL_IN);
  const distanceM = asked.distanceM ?? SCREEN_DISTANCE_M;
  const wanted = fontPx(LEAST_TEXT_ARC_MINUTES, distanceM, pxPerM);
  const share = Math.min(1, room.width / (LEAST.across * wanted), room.height / (LEAST.down * wanted));
  const [across, down] = [room.width / (wanted * share), room.height / (wanted * share)];
  return {
    textPx: wanted * share,
    leadPx: fontPx(LEAST_LEAD_ARC_MINUTES, distanceM, pxPerM) * share,
    stacked: false,
    holds: across >= FULL_ACROSS ? 'all' : down >= ALL_WORDS_DOWN ? (across >= PLANE_BESIDE_ACROSS + 8 ? 'no-rail' : 'plane-above') : across >= PLANE_BESIDE_ACROSS ? 'no-rail' : 'words-alone',
    low: down < ALL_WORDS_DOWN,
    readableWithinM: share < 1 ? distanceM * share : null,
  };
}

/** The font size whose capitals subtend an angle; a hair more, so that rounding never falls below. */
function fontPx(arcMinutes: number, distanceM: number, pxPerM: number): number {
  const capitalM = distanceM * Math.tan(((arcMinutes / 60) * Math.PI) / 180);
  return Math.ceil((capitalM * pxPerM * 10) / CAPITAL_SHARE) / 10;
}
