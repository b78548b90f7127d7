import { tallyOf } from './tally.ts';

export interface Individuals {
  readonly centre: number;
  /** Mean difference between neighbours, signs left out. */
  readonly meanMovingRange: number;
  /** Three standard deviations to either side, estimated from neighbours, so that a slow drift does not widen them. */
  readonly low: number;
  readonly high: number;
}

/** Mean range of two normal values in SD: 2/√π. */
const RANGE_OF_TWO = 1.128;

/** Control limits for single values in the order they came; null under two (NIST/SEMATECH e-Handbook, 6.3.2.2). */
export function individuals(values: readonly number[]): Individuals | null {
  if (values.length < 2) return null;
  const { mean: centre } = tallyOf(values);
  const { mean: meanMovingRange } = tallyOf(values.slice(1).map((value, i) => Math.abs(value - values[i]!)));
  const reach = (3 * meanMovingRange) / RANGE_OF_TWO;
  return { centre, meanMovingRange, low: centre - reach, high: centre + reach };
}
