/**
 * Exponentially weighted moving average: each value pulls the average towards itself by `lambda`, so a drift shows sooner
 * than in the values. One average for each value, in their unit; `start` is where it stood before the first.
 * @param lambda in (0, 1]; 0.3 for drift within a session
 *
 * Roberts, Technometrics 1:239 (1959); NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.
 */
export function ewma(values: readonly number[], lambda: number, start: number): readonly number[] {
  let average = start;
  return values.map((value) => (average += lambda * (value - average)));
}

/** The last `keep` averages after one value more, the oldest first: what `ewma` ends with, from what it ended with before. */
export function smoothedWith(last: readonly number[], value: number, { lambda, start, keep }: { readonly lambda: number; readonly start: number; readonly keep: number }): readonly number[] {
  const before = last.at(-1) ?? start;
  return [...last.slice(Math.max(0, last.length + 1 - keep)), before + lambda * (value - before)];
}

/**
 * How far from where it stood the average of an undrifting series goes: `width` of its standard deviations once many
 * values have come, sd·√(λ/(2 − λ)) each (NIST, as above). Fewer values stay closer, so early alarms are rare.
 */
export const ewmaReach = (sd: number, lambda: number, width = 3): number => width * sd * Math.sqrt(lambda / (2 - lambda));
