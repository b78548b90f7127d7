import { rungeKutta4 } from './runge-kutta.ts';
import { spanOf, type Columns } from './path-samples.ts';
import { columnCount, startVaried, variedSize, type VariedMotion } from './varied-motion.ts';

/** Place and velocity in the middle, C_D, two numbers of the push. */
export const unknownCount = 3 + columnCount;
/** Twelve to fifteen steps a pitch: 10 nm at the plate (measured in tests/core/flight). */
export const followStepS = 0.03;

/** A flight with its derivatives, followed from the middle of the samples over all of them, and told at each. */
export interface FollowedFlight {
  /** Flies again with these unknowns. */
  follow(unknowns: Float64Array): void;
  /** Writes what is left of each sample, place minus flight, axis by axis. */
  leave(residuals: readonly Float64Array[]): void;
  /**
   * Adds up the lower triangle of JᵀWJ and JᵀWr over the kept samples, with one weight for each axis. The part of J for the
   * starting place is one on its own axis and nothing elsewhere.
   */
  addUp(residuals: readonly Float64Array[], kept: Uint8Array, weightsPerM2: readonly number[], normal: Float64Array, pull: Float64Array): void;
}

/**
 * Nodes lie on a grid about the middle; between two of them the flight and its derivatives are cubics through place and
 * velocity of both. Where the samples lie on the grid is worked out once; nothing is allocated after that.
 */
export function followedFlight({ times, places, count }: Columns, { motion, unknowns: forces }: VariedMotion): FollowedFlight {
  const size = variedSize; // read once: the loops below run ten thousand times a fit
  const columns = columnCount;
  const all = unknownCount;
  const step = rungeKutta4(size, motion);
  const { firstS, lastS } = spanOf(times);
  const back = Math.max(1, Math.ceil(-firstS / followStepS));
  const last = back + Math.max(1, Math.ceil(lastS / followStepS));
  const nodes = new Float64Array((last + 1) * size);
  const start = new Float64Array(size);
  const now = new Float64Array(size);
  const { before, cubic } = placedOnGrid(times, back, last);
  const slopes = new Float64Array(columns);

  const walk = (stepS: number, towards: number): void => {
    now.set(start);
    for (let node = back; node !== towards; ) {
      step(0, stepS, now, now);
      node += stepS > 0 ? 1 : -1;
      nodes.set(now, node * size);
    }
  };
  const follow = (unknowns: Float64Array): void => {
    for (let i = 0; i < 3; i += 1) forces[i] = unknowns[6 + i]!;
    startVaried(unknowns, start);
    nodes.set(start, back * size);
    walk(followStepS, last);
    walk(-followStepS, 0);
  };
  const at = (sample: number, offset: number): number => {
    const from = before[sample]! + offset;
    const c = 4 * sample;
    return cubic[c]! * nodes[from]! + cubic[c + 1]! * nodes[from + 3]! + cubic[c + 2]! * nodes[from + size]! + cubic[c + 3]! * nodes[from + size + 3]!;
  };
  const leave = (residuals: readonly Float64Array[]): void => {
    for (let axis = 0; axis < 3; axis += 1) {
      const residual = residuals[axis]!;
      const place = places[axis]!;
      for (let i = 0; i < count; i += 1) residual[i] = place[i]! - at(i, axis);
    }
  };
  const addSample = (sample: number, axis: number, weight: number, weighed: number, normal: Float64Array, pull: Float64Array): void => {
    const a = cubic[4 * sample]!;
    const b = cubic[4 * sample + 1]!;
    const c = cubic[4 * sample + 2]!;
    const d = cubic[4 * sample + 3]!;
    let from = before[sample]! + 6 + axis;
    normal[axis * all + axis] = normal[axis * all + axis]! + weight;
    pull[axis] = pull[axis]! + weighed;
    for (let row = 0; row < columns; row += 1) {
      const slope = a * nodes[from]! + b * nodes[from + 3]! + c * nodes[from + size]! + d * nodes[from + size + 3]!;
      const start = (3 + row) * all;
      const heavy = weight * slope;
      from += 6;
      slopes[row] = slope;
      pull[3 + row] = pull[3 + row]! + weighed * slope;
      normal[start + axis] = normal[start + axis]! + heavy;
      for (let column = 0; column <= row; column += 1) {
        normal[start + 3 + column] = normal[start + 3 + column]! + heavy * slopes[column]!;
      }
    }
  };
  const addUp: FollowedFlight['addUp'] = (residuals, kept, weightsPerM2, normal, pull) => {
    normal.fill(0);
    pull.fill(0);
    for (let axis = 0; axis < 3; axis += 1) {
      const weight = weightsPerM2[axis]!;
      const residual = residuals[axis]!;
      for (let i = 0; i < count; i += 1) {
        if (kept[i] === 1) addSample(i, axis, weight, weight * residual[i]!, normal, pull);
      }
    }
  };
  return { follow, leave, addUp };
}

/** Where each sample's interval begins in the nodes, and the four weights of its cubic: both places, both velocities. */
function placedOnGrid(times: Float64Array, back: number, last: number): { before: Int32Array; cubic: Float64Array } {
  const before = new Int32Array(times.length);
  const cubic = new Float64Array(4 * times.length);
  for (let i = 0; i < times.length; i += 1) {
    const on = times[i]! / followStepS + back;
    const node = Math.min(last - 1, Math.max(0, Math.floor(on)));
    const u = on - node;
    before[i] = node * variedSize;
    cubic[4 * i] = 1 - u * u * (3 - 2 * u);
    cubic[4 * i + 1] = followStepS * u * (1 - u) * (1 - u);
    cubic[4 * i + 2] = u * u * (3 - 2 * u);
    cubic[4 * i + 3] = followStepS * u * u * (u - 1);
  }
  return { before, cubic };
}
