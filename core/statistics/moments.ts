export interface Moments {
  readonly count: number;
  readonly mean: number;
  /** Divides by n − 1; null for one value. */
  readonly sd: number | null;
  /** sd / √n; null for one value. */
  readonly standardErrorOfMean: number | null;
}

/**
 * Count, mean and scatter of finite values, in the unit they come in. Null when there are none.
 *
 * Two passes over the differences from the first value (Chan, Golub & LeVeque, American Statistician 37:242, 1983):
 * nothing is lost when the values are large beside their scatter, and equal values scatter by exactly 0.
 */
export function moments(values: readonly number[]): Moments | null {
  const count = values.length;
  const origin = values[0];
  if (origin === undefined) return null;
  let sum = 0;
  for (const value of values) sum += value - origin;
  const meanFromOrigin = sum / count;
  const mean = origin + meanFromOrigin;
  if (count === 1) return { count, mean, sd: null, standardErrorOfMean: null };
  const sd = Math.sqrt(squaresAbout(values, origin, meanFromOrigin) / (count - 1));
  return { count, mean, sd, standardErrorOfMean: sd / Math.sqrt(count) };
}

function squaresAbout(values: readonly number[], origin: number, meanFromOrigin: number): number {
  let squares = 0;
  for (const value of values) {
    const deviation = value - origin - meanFromOrigin;
    squares += deviation * deviation;
  }
  return squares;
}
