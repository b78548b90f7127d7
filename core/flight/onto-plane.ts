import type { Step } from './runge-kutta.ts';

/** A ball is walked straight for so long at most: its velocity changes by some nm/s on the way, its place by nothing. */
const straightS = 2e-10;

/**
 * Shortens a step that goes over the plane y = `planeYM` until it ends on it, by Newton's method on its length from the cubic
 * between the two ends; linear interpolation inside a step of 5 ms would miss by 0.1 mm. `stepS` may be negative. Returns the length,
 * with the state in `to`. The state holds place and velocity in its first six numbers.
 */
export function stepOntoPlane(planeYM: number, step: Step, timeS: number, stepS: number, from: Float64Array, to: Float64Array): number {
  let lengthS = stepS * shareOf(planeYM - from[1]!, from[4]! * stepS, to[1]! - from[1]!, to[4]! * stepS);
  for (let round = 0; round < 8; round += 1) {
    step(timeS, lengthS, from, to);
    const missedS = (planeYM - to[1]!) / to[4]!;
    if (Math.abs(missedS) < straightS) {
      to[0] = to[0]! + missedS * to[3]!;
      to[1] = planeYM;
      to[2] = to[2]! + missedS * to[5]!;
      return lengthS + missedS;
    }
    if (to[4] === 0) break;
    lengthS = stepS * Math.min(1, Math.max(0, (lengthS + missedS) / stepS));
  }
  return lengthS;
}

/** The share u of a step at which the cubic that goes `way`, with the slopes `start` and `end`, has come to `wanted`. */
function shareOf(wanted: number, start: number, way: number, end: number): number {
  const square = 3 * way - 2 * start - end;
  const cube = start + end - 2 * way;
  let share = wanted / way;
  for (let round = 0; round < 4; round += 1) {
    const slope = start + share * (2 * square + 3 * share * cube);
    share -= (share * (start + share * (square + share * cube)) - wanted) / slope;
  }
  return share >= 0 && share <= 1 ? share : wanted / way;
}
