import { followedFlight, unknownCount } from './followed-flight.ts';
import { measureDistances, type Residuals } from './misreads.ts';
import { factor, inverseOf, solveFactored } from './normal-equations.ts';
import type { Columns } from './path-samples.ts';
import type { VariedMotion } from './varied-motion.ts';
import type { Vector } from './vector.ts';

export interface MotionFit {
  readonly kind: 'fit';
  /** Place, velocity in the middle of the samples, C_D, two numbers of the push. */
  readonly unknowns: Float64Array;
  /** Of the unknowns, row by row. */
  readonly covariance: Float64Array;
  readonly kept: Uint8Array;
  /** Standard deviation of one kept sample, by axis. */
  readonly noiseM: Vector;
  readonly residualRmsM: number;
}

/** `scattered`: so many samples lie off any one flight; `stray`: no flight of a ball comes near the samples. */
export type NoMotionFit = { readonly kind: 'scattered'; readonly off: number } | { readonly kind: 'stray' };

/** A sample farther than this many robust standard deviations from the path is a misread: 1 good one in 6000 goes with it. */
const cutDeviations = 4.5;
export const mostRejectedShare = 0.3;
const mostRounds = 25;
/** After this many rounds a sample on the edge of the cut stays where it is, and so do the weights of the axes. */
const roundsOfWeighing = 8;
/** The last step taken, squared, in standard errors: a hundredth of one; what is left after it is under a hundred-thousandth (measured in tests/core/flight). */
const closeEnough = 1e-4;
/** No instrument places a ball finer; samples without noise are fitted, and their errors told, as if they had so much. */
const finestNoiseM = 1e-4;
const perAxis = 3; // unknowns that one axis pays for: place, velocity and one force

/**
 * Gauss–Newton on the equations of motion from a first guess of the unknowns, which it overwrites like `residuals`. Each round cuts misreads
 * until the cut has settled, weighs each axis by its own noise and takes a whole step; it ends when the step is far below the errors.
 */
export function fitMotion(columns: Columns, varied: VariedMotion, unknowns: Float64Array, residuals: Residuals): MotionFit | NoMotionFit {
  const flight = followedFlight(columns, varied);
  const kept = new Uint8Array(columns.count);
  const normal = new Float64Array(unknownCount * unknownCount);
  const pull = new Float64Array(unknownCount);
  const step = new Float64Array(unknownCount);
  let weightsPerM2: readonly number[] = [];
  let settled = false;
  for (let round = 1; round <= mostRounds; round += 1) {
    flight.follow(unknowns);
    flight.leave(residuals.axes);
    if (!settled) {
      measureDistances(residuals);
      settled = !cut(residuals.squares, kept) || round === roundsOfWeighing;
    }
    const spread = spreadOf(residuals.axes, kept);
    if (round <= roundsOfWeighing) weightsPerM2 = spread.variancesM2.map((variance) => 1 / Math.max(finestNoiseM ** 2, variance));
    const off = columns.count - spread.count;
    if (off > mostRejectedShare * columns.count) return { kind: 'scattered', off };
    flight.addUp(residuals.axes, kept, weightsPerM2, normal, pull);
    if (!factor(normal, unknownCount)) return { kind: 'stray' };
    step.set(pull);
    solveFactored(normal, unknownCount, step);
    let decrement = 0;
    for (let i = 0; i < unknownCount; i += 1) {
      unknowns[i] = unknowns[i]! + step[i]!;
      decrement += step[i]! * pull[i]!;
    }
    if (settled && decrement < closeEnough) {
      const [x, y, z] = spread.variancesM2;
      return { kind: 'fit', unknowns, covariance: inverseOf(normal, unknownCount), kept, noiseM: [Math.sqrt(x), Math.sqrt(y), Math.sqrt(z)], residualRmsM: spread.rmsM };
    }
  }
  return { kind: 'stray' };
}

interface Spread {
  readonly count: number;
  readonly variancesM2: readonly [number, number, number];
  readonly rmsM: number;
}

function spreadOf(axes: readonly Float64Array[], kept: Uint8Array): Spread {
  let count = 0;
  for (const keep of kept) count += keep;
  const squares = [0, 0, 0] as [number, number, number];
  for (let axis = 0; axis < 3; axis += 1) {
    const residual = axes[axis]!;
    let sum = 0;
    for (let i = 0; i < kept.length; i += 1) sum += kept[i]! * residual[i]! * residual[i]!;
    squares[axis] = sum;
  }
  const freedom = Math.max(1, count - perAxis);
  return { count, variancesM2: [squares[0] / freedom, squares[1] / freedom, squares[2] / freedom], rmsM: Math.sqrt((squares[0] + squares[1] + squares[2]) / count) };
}

/** Which samples are no misreads; true where that changed. */
function cut(squares: Float64Array, kept: Uint8Array): boolean {
  let changed = false;
  for (let i = 0; i < kept.length; i += 1) {
    const keep = Number(squares[i]! <= cutDeviations ** 2);
    changed ||= keep !== kept[i];
    kept[i] = keep;
  }
  return changed;
}
