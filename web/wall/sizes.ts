import { inchesToM } from '../../core/units/convert.ts';

/** Height of a capital letter in Hanken Grotesk as a share of the font size, measured on its H. */
export const CAPITAL_SHARE = 0.7;
const SCREEN_DIAGONAL_IN = 55;
const SCREEN_DISTANCE_M = 6;
const LEAST_TEXT_ARC_MINUTES = 12;
const LEAST_LEAD_ARC_MINUTES = 30;
/** Narrower than this a screen is held in a hand, unless its size and distance are told. */
const HAND_WIDTH_PX = 700;

export interface WallSizes {
  /** Size of every text. */
  readonly textPx: number;
  /** Size of the last throw's words. */
  readonly leadPx: number;
  /** One column, top to bottom. */
  readonly stacked: boolean;
}

/** Font sizes that are read from where the viewer stands: 30 minutes of arc in capital height for the last throw's words, 12 for all else. */
export function wallSizes(width: number, height: number, asked: { readonly diagonalIn: number | null; readonly distanceM: number | null }): WallSizes {
  const stacked = width < HAND_WIDTH_PX;
  if (stacked && asked.diagonalIn === null && asked.distanceM === null) return { textPx: 17, leadPx: 42, stacked };
  const pxPerM = Math.hypot(width, height) / inchesToM(asked.diagonalIn ?? SCREEN_DIAGONAL_IN);
  const distanceM = asked.distanceM ?? SCREEN_DISTANCE_M;
  return { textPx: fontPx(LEAST_TEXT_ARC_MINUTES, distanceM, pxPerM), leadPx: fontPx(LEAST_LEAD_ARC_MINUTES, distanceM, pxPerM), stacked };
}

/** The font size whose capitals subtend an angle; a hair more, so that rounding never falls below. */
function fontPx(arcMinutes: number, distanceM: number, pxPerM: number): number {
  const capitalM = distanceM * Math.tan(((arcMinutes / 60) * Math.PI) / 180);
  return Math.ceil((capitalM * pxPerM * 10) / CAPITAL_SHARE) / 10;
}
