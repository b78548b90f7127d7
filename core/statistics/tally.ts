/** What is kept of values for means and differences: enough for both, whatever is done with them later. */
export interface Tally {
  readonly count: number;
  /** 0 when there are no values. */
  readonly mean: number;
  /** Sum of the squared deviations from the mean, in the square of the unit. */
  readonly squares: number;
}

export const NO_VALUES: Tally = { count: 0, mean: 0, squares: 0 };

/** One finite value more (Welford, Technometrics 4:419, 1962): what comes of values one by one is `tallyOf` of them all, up to rounding. */
export function tallyWith({ count, mean, squares }: Tally, value: number): Tally {
  const more = count + 1;
  const before = value - mean;
  const now = mean + before / more;
  return { count: more, mean: now, squares: squares + before * (value - now) };
}

/**
 * Count, mean and squares of finite values.
 *
 * Two passes over the differences from the first value (Chan, Golub & LeVeque, American Statistician 37:242, 1983):
 * nothing is lost when the values are large beside their scatter, and equal values scatter by exactly 0.
 */
export function tallyOf(values: readonly number[]): Tally {
  const count = values.length;
  const origin = values[0];
  if (origin === undefined) return { count, mean: 0, squares: 0 };
  let sum = 0;
  for (const value of values) sum += value - origin;
  const meanFromOrigin = sum / count;
  let squares = 0;
  for (const value of values) {
    const deviation = value - origin - meanFromOrigin;
    squares += deviation * deviation;
  }
  return { count, mean: origin + meanFromOrigin, squares };
}
