import { moments } from './moments.ts';
import { tWithin } from './t-quantile.ts';

export interface Grubbs {
  /** Of the value farthest from the mean. */
  readonly index: number;
  /** How far, in SD. */
  readonly g: number;
  readonly critical: number;
  /** g exceeds the critical value: worth a look, never a reason to delete. */
  readonly flagged: boolean;
}

/**
 * Two-sided test for one outlier, Grubbs at 0.05 unless given: it flags so many of clean samples whatever their size. Null
 * under three values and when all are equal.
 *
 * Grubbs, Technometrics 11:1 (1969); critical value (n−1)/√n·√(t²/(n−2+t²)), t at α/(2n) (NIST/SEMATECH e-Handbook, 1.3.5.17).
 */
export function grubbs(values: readonly number[], alpha = 0.05): Grubbs | null {
  const found = moments(values);
  if (found === null || found.count < 3 || found.sd === null || found.sd === 0) return null;
  const { count, mean, sd } = found;
  const distances = values.map((value) => Math.abs(value - mean));
  const g = Math.max(...distances) / sd;
  const critical = grubbsCritical(count, alpha);
  return { index: distances.indexOf(Math.max(...distances)), g, critical, flagged: g > critical };
}

function grubbsCritical(count: number, alpha: number): number {
  const squared = tWithin(1 - alpha / count, count - 2) ** 2;
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt(squared / (count - 2 + squared));
}
