import { plate } from '../../core/flight/ball.ts';
import { grownTo, type Separation } from './plane-scale.ts';

/** At least so far to either side of the middle of the plate, and so high over the ground. */
const LEAST_SIDE_M = 0.6;
const LEAST_HEIGHT_M = 1.3;
/** Farther than this a throw is drawn at the rim, pointing outwards. */
const MOST_SIDE_M = 1.2;
const MOST_HEIGHT_M = 2.2;
/** The reach grows in steps, so that the picture seldom moves. */
const STEP_M = 0.15;
const MARGIN_M = 0.06;
/** The plate lies on the ground and is seen from behind and above: its depth shows by this share. */
const FORESHORTENED = 0.35;

/** From metres off the middle of the plate and over the ground to pixels: one scale for both. */
export interface PlateScale {
  readonly pxPerM: number;
  readonly x: (armSideM: number) => number;
  readonly y: (heightM: number) => number;
  /** How high the picture reaches. */
  readonly topM: number;
}

/** Fits throws by their height over the ground and arm side of the middle, and the plate under them, over a foot of so many pixels. */
export function plateScale(places: readonly Separation[], { width, height }: { readonly width: number; readonly height: number }, footPx: number, armSign: 1 | -1): PlateScale {
  const grown = (leastM: number, mostM: number, values: readonly number[]): number => grownTo(values, { leastM, mostM, marginM: MARGIN_M, stepM: STEP_M });
  const sideM = grown(LEAST_SIDE_M, MOST_SIDE_M, places.map(({ armSideM }) => Math.abs(armSideM)));
  const heightM = grown(LEAST_HEIGHT_M, MOST_HEIGHT_M, places.map(({ verticalM }) => verticalM));
  const depthM = plate.frontYM * FORESHORTENED;
  const pxPerM = Math.max(1, Math.min(width / (2 * sideM), (height - footPx) / (heightM + depthM)));
  const groundY = height - footPx - depthM * pxPerM;
  return { pxPerM, topM: groundY / pxPerM, x: (armSideM) => width / 2 + armSign * armSideM * pxPerM, y: (upM) => groundY - upM * pxPerM };
}

/** The outline of the plate on the ground, its front where throws are counted, its point towards the catcher. */
export function plateOutline({ x, y }: PlateScale): readonly (readonly [number, number])[] {
  const half = plate.widthM / 2;
  const at = (sideM: number, behindM: number): readonly [number, number] => [x(sideM), y(-behindM * FORESHORTENED)];
  return [at(-half, 0), at(half, 0), at(half, plate.frontYM / 2), at(0, plate.frontYM), at(-half, plate.frontYM / 2)];
}
