import { aimedAt, pathFromRelease } from '../../../core/flight/aim.ts';
import { stateAtY, type ConstantAcceleration } from '../../../core/flight/constant-acceleration.ts';
import { flyPitch, type Flight } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { changeup, launchOf, tailingFastball } from '../../core/flight/pitches.ts';
import { footM, inchM } from '../../core/flight/feet-and-miles.ts';

/** The pair that the page explains everything with: a right-hander's fastball of 95 mph at 1:00 and changeup of 85 mph at 2:00. */
export const air = { airDensityKgM3: 1.2 } as const;
export const slow = launchOf(changeup);
export const slowFlight: Flight = flyPitch(slow, air);
export const fastFlight: Flight = flyPitch(launchOf(tailingFastball), air);

export const slowPath: ConstantAcceleration = pathOf(slowFlight);
const fastPath: ConstantAcceleration = pathOf(fastFlight);
/** The fastball aimed at where the changeup crosses the plate. */
export const aimedFast: ConstantAcceleration = aimedAt(fastPath, { xM: slowFlight.end.positionM[0], zM: slowFlight.end.positionM[2] })!;
export const aimedFastArrivalS: number = stateAtY(aimedFast, 17 * inchM)!.timeS;

function pathOf({ start, end }: Flight): ConstantAcceleration {
  return pathFromRelease(start, end)!;
}

/** Induced break, in; arm side positive. */
export function movedIn({ start, end }: Flight): { readonly up: number; readonly armSide: number } {
  const { verticalM, horizontalM } = inducedBreakBetween(start, end);
  return { up: verticalM / inchM, armSide: -horizontalM / inchM };
}

export const inches = (metres: number): string => `${(metres / inchM).toFixed(1)} in`;
export const feet = (metres: number): number => metres / footM;
