import { tallyOf, type Tally } from './tally.ts';

export interface Moments {
  readonly count: number;
  readonly mean: number;
  /** Divides by n − 1; null for one value. */
  readonly sd: number | null;
  /** sd / √n; null for one value. */
  readonly standardErrorOfMean: number | null;
}

/** Count, mean and scatter of finite values, in the unit they come in. Null when there are none. */
export function moments(values: readonly number[]): Moments | null {
  return momentsOf(tallyOf(values));
}

/** The same of values that were tallied. */
export function momentsOf({ count, mean, squares }: Tally): Moments | null {
  if (count === 0) return null;
  if (count === 1) return { count, mean, sd: null, standardErrorOfMean: null };
  const sd = Math.sqrt(squares / (count - 1));
  return { count, mean, sd, standardErrorOfMean: sd / Math.sqrt(count) };
}
