import { followStepS, unknownCount } from './followed-flight.ts';
import { stepOntoPlane } from './onto-plane.ts';
import { rungeKutta4 } from './runge-kutta.ts';
import { columnCount, startVaried, variedSize, type VariedMotion } from './varied-motion.ts';

/** Where and when a fitted flight passes a plane across y, with the gradient of each number by the unknowns of the fit. */
export interface Crossing {
  /** From the middle of the samples. */
  readonly timeS: number;
  /** x, y, z, vx, vy, vz. */
  readonly state: Float64Array;
  readonly timeSlope: Float64Array;
  /** One gradient for each number of `state`. */
  readonly slopes: readonly Float64Array[];
}

const stepS = followStepS;
/** Farther away in time than this the fit says nothing. */
const farthestS = 5;

/** Follows the flight of these unknowns from the middle, in whichever direction of time, to the plane; null where it does not get there. */
export function crossingOf({ motion, unknowns: forces }: VariedMotion, unknowns: Float64Array, planeYM: number): Crossing | null {
  const step = rungeKutta4(variedSize, motion);
  const from = new Float64Array(variedSize);
  const to = new Float64Array(variedSize);
  forces.set(unknowns.subarray(6));
  startVaried(unknowns, from);
  const side = Math.sign(from[1]! - planeYM);
  const aheadS = stepS * (side * from[4]! < 0 ? 1 : -1);
  let timeS = 0;
  while (side !== 0) {
    step(timeS, aheadS, from, to);
    if ((to[1]! - planeYM) * side <= 0) break;
    timeS += aheadS;
    from.set(to);
    if (!(Math.abs(timeS) < farthestS)) return null;
  }
  if (side === 0) to.set(from);
  else timeS += stepOntoPlane(planeYM, step, timeS, aheadS, from, to);
  return withGradients(timeS, to, motion);
}

/** ∂/∂θ on the plane: ∂/∂θ at a fixed time, plus the rate of change times how the time of crossing moves, −(∂y/∂θ)/vy. */
function withGradients(timeS: number, varied: Float64Array, motion: VariedMotion['motion']): Crossing {
  const rate = new Float64Array(variedSize);
  motion(timeS, varied, rate);
  const atTime = (number: number): Float64Array => {
    const slope = new Float64Array(unknownCount);
    if (number < 3) slope[number] = 1;
    for (let column = 0; column < columnCount; column += 1) slope[3 + column] = varied[6 + 6 * column + number]!;
    return slope;
  };
  const timeSlope = atTime(1).map((slope) => -slope / varied[4]!);
  const slopes = [0, 1, 2, 3, 4, 5].map((number) => atTime(number).map((slope, i) => slope + rate[number]! * timeSlope[i]!));
  return { timeS, state: varied.slice(0, 6), timeSlope, slopes };
}
