import type { Step } from './runge-kutta.ts';

/**
 * Shortens a step that goes over the plane y = `planeYM` until it ends on it, by Newton's method on its length from a parabola
 * between the two ends; linear interpolation inside a step of 5 ms would miss by 0.1 mm. `stepS` may be negative. Returns the length,
 * with the state in `to`. The state holds y in its second place and the speed along y in its fifth.
 */
export function stepOntoPlane(planeYM: number, step: Step, timeS: number, stepS: number, from: Float64Array, to: Float64Array): number {
  let lengthS = stepS * shareOf(planeYM - from[1]!, from[4]! * stepS, to[1]! - from[1]!);
  for (let round = 0; round < 8; round += 1) {
    step(timeS, lengthS, from, to);
    const missM = to[1]! - planeYM;
    if (Math.abs(missM) < 1e-12 || to[4] === 0) break;
    lengthS = stepS * Math.min(1, Math.max(0, (lengthS - missM / to[4]!) / stepS));
  }
  return lengthS;
}

/** The share u of a step at which u·start + u²·(way − start), the parabola that starts so fast and goes so far, has come to `wanted`. */
function shareOf(wanted: number, start: number, way: number): number {
  const bend = way - start;
  const root = Math.sqrt(start * start + 4 * bend * wanted);
  const share = (2 * wanted) / (start + (start < 0 ? -root : root));
  return share >= 0 && share <= 1 ? share : wanted / way;
}
