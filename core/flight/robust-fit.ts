import { expectedJerk } from './expected-jerk.ts';
import { fitQuadratics, type QuadraticFit } from './normal-equations.ts';
import type { Vector } from './vector.ts';

type Triple = readonly [number, number, number];

/** A cubic per axis about a middle moment; the jerk comes from the air, not from the samples. */
export interface CubicPath {
  readonly middleS: number;
  /** Position, velocity and acceleration of each axis at `middleS`. */
  readonly axes: readonly [Triple, Triple, Triple];
  readonly jerkMps3: Vector;
}

export interface RobustFit {
  readonly cubic: CubicPath;
  readonly kept: readonly boolean[];
  /** Standard deviation of one kept sample, by axis. */
  readonly noiseM: Vector;
  readonly residualRmsM: number;
  readonly unitCovariance: QuadraticFit['unitCovariance'];
}

/** A sample farther than this many robust standard deviations from the path is a misread: 1 good one in 6000 goes with it. */
const cutDeviations = 4.5;
const softRounds = 8;
const mostRounds = 30;
/** Below this a path through noiseless samples would reject its own rounding. */
const finestNoiseM = 0.0005;
const deviationsPerMad = 1.4826;

/**
 * Fits the cubic and finds the misreads: first with soft (Cauchy) weights, so that gross outliers cannot drag the start,
 * then with a cut on the distance in median-absolute-deviation units until the kept set no longer changes.
 * Null where the times do not carry a quadratic.
 */
export function fitRobustly(times: readonly number[], columns: readonly [readonly number[], readonly number[], readonly number[]], airDensityKgM3: number): RobustFit | null {
  const middleS = times.reduce((sum, t) => sum + t, 0) / times.length;
  const shifted = times.map((t) => t - middleS);
  let weights = times.map(() => 1);
  let jerk: Vector = [0, 0, 0];
  for (let round = 1; ; round += 1) {
    const fit = fitQuadratics(shifted, weights, columns.map((column, axis) => column.map((value, i) => value - (jerk[axis]! * shifted[i]! ** 3) / 6)));
    if (!fit) return null;
    const axes = fit.coefficients as unknown as CubicPath['axes'];
    const residuals = residualsOf({ middleS, axes, jerkMps3: jerk }, times, columns);
    const nextWeights = weigh(distances(residuals), round <= softRounds);
    if (round > softRounds && (round === mostRounds || nextWeights.every((w, i) => w === weights[i]))) {
      return { cubic: { middleS, axes, jerkMps3: jerk }, unitCovariance: fit.unitCovariance, ...spread(residuals, weights) };
    }
    weights = nextWeights;
    jerk = expectedJerk([axes[0][1], axes[1][1], axes[2][1]], [axes[0][2], axes[1][2], axes[2][2]], airDensityKgM3);
  }
}

function residualsOf({ middleS, axes, jerkMps3 }: CubicPath, times: readonly number[], columns: readonly (readonly number[])[]): number[][] {
  return columns.map((column, axis) => {
    const [p, v, a] = axes[axis]!;
    return column.map((value, i) => {
      const t = times[i]! - middleS;
      return value - (p + t * (v + t * (a / 2 + (t * jerkMps3[axis]!) / 6)));
    });
  });
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
