import { blockedDesign, effectiveOf, type BlockedDesign } from './blocked-design.ts';
import type { Tally } from './tally.ts';

/** One measure of two trials on one day. */
export interface ComparedDay {
  readonly a: Tally;
  readonly b: Tally;
}

export interface BlockedDifference {
  readonly design: BlockedDesign;
  /** Mean of B minus mean of A within the same day, days weighted by what they tell. */
  readonly difference: number;
  /** Pooled: the residual of "day + trial". */
  readonly variance: number;
  /** Of each trial within its days; null where no day holds two of its throws. */
  readonly varianceA: number | null;
  readonly varianceB: number | null;
}

/** What is weighed when variances are not taken as one. */
export type Variances = Pick<BlockedDifference, 'variance' | 'varianceA' | 'varianceB'>;

/** Rounding of means of equal throws stays far below it. */
const FLAT = 1e-12;

/**
 * Difference of two trials of the same effect each day, with the day as a block: a day on which everything sails shifts
 * both trials and not their difference. One day is the two-sample comparison with pooled variance.
 *
 * Null when nothing can be said: no day holds both trials, no degree of freedom is left, or the throws do not scatter.
 * Least squares of the additive model, which two trials make closed.
 */
export function blockedDifference(days: readonly ComparedDay[]): BlockedDifference | null {
  const design = blockedDesign(days.map(({ a, b }) => ({ a: a.count, b: b.count })));
  if (design.effectiveN === 0 || design.freedom < 1) return null;
  const used = days.filter(({ a, b }) => a.count > 0 && b.count > 0);
  const difference = weightedDifference(used, design.effectiveN);
  let [squaresA, squaresB, between, largest] = [0, 0, 0, 0];
  for (const { a, b } of used) {
    squaresA += a.squares;
    squaresB += b.squares;
    between += effectiveOf({ a: a.count, b: b.count }) * (b.mean - a.mean - difference) ** 2;
    largest = Math.max(largest, Math.abs(a.mean), Math.abs(b.mean));
  }
  const variance = (squaresA + squaresB + between) / design.freedom;
  if (!(Math.sqrt(variance) > FLAT * largest)) return null;
  return {
    design,
    difference,
    variance,
    varianceA: within(squaresA, design.countA - design.days),
    varianceB: within(squaresB, design.countB - design.days),
  };
}

function weightedDifference(days: readonly ComparedDay[], effectiveN: number): number {
  let difference = 0;
  for (const { a, b } of days) difference += (effectiveOf({ a: a.count, b: b.count }) / effectiveN) * (b.mean - a.mean);
  return difference;
}

const within = (squares: number, freedom: number): number | null => (freedom > 0 ? squares / freedom : null);

/** Variance of the difference when each trial scatters in its own way (Welch, Biometrika 34:28, 1947); null where one has no scatter of its own. */
export function unequalVariance({ varianceA, varianceB }: Variances, { shareA, shareB }: BlockedDesign): number | null {
  return varianceA === null || varianceB === null ? null : varianceA * shareA + varianceB * shareB;
}
