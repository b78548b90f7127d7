import { ball, plate } from './ball.ts';
import { stateAtTime, timeAtY, type ConstantAcceleration } from './constant-acceleration.ts';
import type { Vector } from './vector.ts';

/** One ball width, 2.9 in: what a batter can tell apart is said in it. */
export const ballWidthM = 2 * ball.radiusM;

/** How far two balls are apart as somebody at the plate sees it: side by side and one above the other. */
export interface Apart {
  readonly acrossM: number;
  /** How much farther from the plate the first of the two is. The batter sees next to nothing of it, so it is not part of the gap. */
  readonly behindM: number;
  readonly widths: number;
}

/** The gap between two pitches that leave the hand at the same moment, over the time from release. */
export interface GapLine {
  /** The moments are 0, stepS, 2·stepS … up to the earlier arrival. */
  readonly stepS: number;
  readonly apart: readonly Apart[];
  /** At the earlier arrival: one ball is at the plate, the other may still be on its way. */
  readonly atPlate: Apart;
}

const usualSteps = 40;

/**
 * The distance between the centres of two balls across the flight, both released at t = 0, in `steps` even steps up to the earlier
 * arrival at the plane `plateYM`. At t = 0 it is the release shift. Null when either does not arrive.
 */
export function gapLine(thrown: ConstantAcceleration, fastball: ConstantAcceleration, steps: number = usualSteps, plateYM: number = plate.frontYM): GapLine | null {
  const arrivals = [timeAtY(thrown, plateYM), timeAtY(fastball, plateYM)];
  const endS = Math.min(...arrivals.map((timeS) => timeS ?? Number.NaN));
  if (!(endS > 0)) return null;
  const stepS = endS / steps;
  const apart = Array.from({ length: steps + 1 }, (_, step) => apartAt(thrown, fastball, step === steps ? endS : step * stepS));
  return { stepS, apart, atPlate: apart[steps]! };
}

/** How far apart two balls are at the same moment after release. */
function apartAt(thrown: ConstantAcceleration, fastball: ConstantAcceleration, timeS: number): Apart {
  return apartOf(stateAtTime(thrown, timeS).positionM, stateAtTime(fastball, timeS).positionM);
}

/** How far apart two places of a ball are. */
export function apartOf(one: Vector, other: Vector): Apart {
  const acrossM = Math.hypot(one[0] - other[0], one[2] - other[2]);
  return { acrossM, behindM: one[1] - other[1], widths: acrossM / ballWidthM };
}
