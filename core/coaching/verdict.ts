import { anytimeDifference, type AnytimeDifference } from '../statistics/anytime-difference.ts';
import { blockedDifference, type ComparedDay } from '../statistics/blocked-difference.ts';

/** Under this many throws of either trial nothing is said. */
export const FEWEST_THROWS = 5;

/** What the evidence allows to say about trial B against trial A; less miss is better. */
export type Verdict =
  | { readonly kind: 'too-few' }
  /** `matters` when the whole interval lies beyond the smallest difference that matters. */
  | ({ readonly kind: 'better' | 'worse'; readonly matters: boolean } & AnytimeDifference)
  | ({ readonly kind: 'no-difference-that-matters' | 'not-settled' } & AnytimeDifference);

export interface Rule {
  /** Chance of ever saying `better` or `worse` when nothing differs, however often one looks. */
  readonly alpha: number;
  /** Smallest difference that matters, in the unit of the measure; above 0. */
  readonly smallest: number;
}

/**
 * α of an athlete's k-th comparison, k from 1: 0.05·6/(π²k²). All of them together stay under 0.05, for Σ 1/k² = π²/6.
 * Throws RangeError unless k is a whole number of at least 1.
 */
export function comparisonAlpha(k: number): number {
  if (!Number.isInteger(k) || k < 1) throw new RangeError(`comparisons are numbered from 1, not ${k}`);
  return (0.05 * 6) / (Math.PI ** 2 * k ** 2);
}

/** The verdict on one measure of two trials, day by day; it may be asked after every throw. */
export function verdictOf(days: readonly ComparedDay[], { alpha, smallest }: Rule): Verdict {
  const found = blockedDifference(days);
  if (found === null || found.design.countA < FEWEST_THROWS || found.design.countB < FEWEST_THROWS) return { kind: 'too-few' };
  const interval = anytimeDifference(found, alpha);
  if (interval === null) return { kind: 'too-few' };
  const { low, high } = interval;
  if (high < 0) return { kind: 'better', matters: high < -smallest, ...interval };
  if (low > 0) return { kind: 'worse', matters: low > smallest, ...interval };
  return { kind: low >= -smallest && high <= smallest ? 'no-difference-that-matters' : 'not-settled', ...interval };
}
