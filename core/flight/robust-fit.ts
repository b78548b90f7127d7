import { fadingOf, nothingFades, type Air, type Fading } from './fading-forces.ts';
import { placeOn, type FadingPath } from './fading-path.ts';
import { fitAxis, type Matrix3 } from './normal-equations.ts';
import type { Vector } from './vector.ts';

type Columns = readonly [readonly number[], readonly number[], readonly number[]];

export interface RobustFit {
  readonly path: FadingPath;
  readonly kept: readonly boolean[];
  /** Standard deviation of one kept sample, by axis. */
  readonly noiseM: Vector;
  readonly residualRmsM: number;
  /** By axis: covariance of place, velocity and acceleration in the middle, for samples of unit variance. */
  readonly unitCovariances: readonly [Matrix3, Matrix3, Matrix3];
}

/** A sample farther than this many robust standard deviations from the path is a misread: 1 good one in 6000 goes with it. */
const cutDeviations = 4.5;
const softRounds = 8;
const mostRounds = 30;
/** Below this a path through noiseless samples would reject its own rounding. */
const finestNoiseM = 0.0005;
const deviationsPerMad = 1.4826;

/**
 * Fits the path and finds the misreads: first with soft (Cauchy) weights, so that gross outliers cannot drag the start,
 * then with a cut on the distance in median-absolute-deviation units until the kept set no longer changes.
 * Null where the times do not carry a parabola.
 */
export function fitRobustly(times: readonly number[], columns: Columns, air: Air): RobustFit | null {
  const middleS = times.reduce((sum, t) => sum + t, 0) / times.length;
  let weights = times.map(() => 1);
  let fading = nothingFades;
  for (let round = 1; ; round += 1) {
    const fit = fitRound(times, columns, weights, middleS, fading);
    if (!fit) return null;
    const { axes } = fit.path;
    const residuals = columns.map((column, axis) => column.map((value, i) => value - placeOn(fit.path, axis as 0 | 1 | 2, times[i]!)));
    const nextWeights = weigh(distances(residuals), round <= softRounds);
    if (round > softRounds + 1 && (round === mostRounds || nextWeights.every((w, i) => w === weights[i]))) {
      return { ...fit, ...spread(residuals, weights) };
    }
    weights = nextWeights;
    fading = fadingOf([axes[0][1], axes[1][1], axes[2][1]], [axes[0][2], axes[1][2], axes[2][2]], air, fading);
  }
}

/** One weighted fit of all axes: the jerk follows the acceleration by the slope `bendPerS` about where it was worked out. */
function fitRound(
  times: readonly number[],
  columns: Columns,
  weights: readonly number[],
  middleS: number,
  fading: Fading,
): Pick<RobustFit, 'path' | 'unitCovariances'> | null {
  const shifted = times.map((t) => t - middleS);
  const fits = columns.map((column, axis) => {
    const bend = fading.bendPerS[axis]!;
    const offset = fading.jerkMps3[axis]! - bend * fading.atMps2[axis]!;
    const snap = fading.snapMps4[axis]!;
    const straight = column.map((value, i) => value - shifted[i]! ** 3 * (offset / 6 + (snap * shifted[i]!) / 24));
    const fit = fitAxis(shifted, weights, straight, bend);
    return fit && { ...fit, jerk: offset + bend * fit.coefficients[2] };
  });
  const [x, y, z] = fits;
  if (!x || !y || !z) return null;
  return {
    path: {
      middleS,
      axes: [x.coefficients, y.coefficients, z.coefficients],
      fading: { ...fading, jerkMps3: [x.jerk, y.jerk, z.jerk] },
    },
    unitCovariances: [x.unitCovariance, y.unitCovariance, z.unitCovariance],
  };
}

/** Squared distance of each sample from the path, in robust standard deviations of each axis. */
function distances(residuals: readonly (readonly number[])[]): number[] {
  const count = residuals[0]!.length;
  const freedom = Math.sqrt(count / Math.max(1, count - 3));
  const scales = residuals.map((axis) => Math.max(finestNoiseM, deviationsPerMad * freedom * median(axis.map(Math.abs))));
  return residuals[0]!.map((_, i) => residuals.reduce((sum, axis, a) => sum + (axis[i]! / scales[a]!) ** 2, 0));
}

function weigh(squares: readonly number[], soft: boolean): number[] {
  return squares.map((square) => (soft ? 1 / (1 + square / 9) : Number(square <= cutDeviations ** 2)));
}

function median(values: number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

function spread(residuals: readonly (readonly number[])[], weights: readonly number[]): Pick<RobustFit, 'kept' | 'noiseM' | 'residualRmsM'> {
  const kept = weights.map((weight) => weight > 0);
  const count = kept.filter(Boolean).length;
  const squares = residuals.map((axis) => axis.reduce((sum, r, i) => sum + (kept[i] ? r * r : 0), 0)) as [number, number, number];
  const freedom = Math.max(1, count - 3);
  return {
    kept,
    noiseM: [Math.sqrt(squares[0] / freedom), Math.sqrt(squares[1] / freedom), Math.sqrt(squares[2] / freedom)],
    residualRmsM: Math.sqrt((squares[0] + squares[1] + squares[2]) / count),
  };
}
