import { momentsOf } from './moments.ts';
import { tallyOf, type Tally } from './tally.ts';
import { tQuantile975 } from './t-quantile.ts';

const LEAST_COUNT = 2;

export type Summary =
  | {
      readonly kind: 'estimate';
      readonly count: number;
      readonly mean: number;
      /** Divides by n − 1. */
      readonly sd: number;
      readonly standardError: number;
      /** 95 % interval of the mean, by Student's t. */
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: 'too-few'; readonly count: number; readonly need: number };

/**
 * One measure over a window of throws, in its own unit: mean, scatter and the ordinary 95 % interval of the mean. It
 * describes one window at one look; a comparison of trials needs an interval that holds at every look.
 *
 * `too-few` under two values. Also when all are equal, with a need of one more: a device that rounds can repeat itself,
 * and an interval of no width would claim what nobody knows. Values must be finite.
 */
export function summarise(values: readonly number[]): Summary {
  return summaryOf(tallyOf(values));
}

/** The same of values that were tallied. */
export function summaryOf(tally: Tally): Summary {
  const found = momentsOf(tally);
  if (found === null || found.sd === null || found.standardErrorOfMean === null) {
    return { kind: 'too-few', count: tally.count, need: LEAST_COUNT };
  }
  const { count, mean, sd, standardErrorOfMean: standardError } = found;
  if (sd === 0) return { kind: 'too-few', count, need: count + 1 };
  const reach = tQuantile975(count - 1) * standardError;
  return { kind: 'estimate', count, mean, sd, standardError, low: mean - reach, high: mean + reach };
}

/** The interval of `summarise` alone; null where that says `too-few`. */
export function interval95OfMean(values: readonly number[]): { readonly low: number; readonly high: number } | null {
  const summary = summarise(values);
  return summary.kind === 'estimate' ? { low: summary.low, high: summary.high } : null;
}
