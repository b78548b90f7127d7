import type { Step } from './runge-kutta.ts';

/**
 * Shortens a step that goes over the plane y = `planeYM`, by Newton's method on its length, until it ends on it; linear
 * interpolation inside a step of 5 ms would miss by 0.1 mm. `stepS` may be negative. Returns the length, with the state in `to`.
 * The state holds y in its second place and the speed along y in its fifth.
 */
export function stepOntoPlane(planeYM: number, step: Step, timeS: number, stepS: number, from: Float64Array, to: Float64Array): number {
  let lengthS = (stepS * (planeYM - from[1]!)) / (to[1]! - from[1]!);
  for (let round = 0; round < 8; round += 1) {
    step(timeS, lengthS, from, to);
    const missM = to[1]! - planeYM;
    if (Math.abs(missM) < 1e-13 || to[4] === 0) break;
    const share = (lengthS - missM / to[4]!) / stepS;
    lengthS = stepS * Math.min(1, Math.max(0, share));
  }
  return lengthS;
}
