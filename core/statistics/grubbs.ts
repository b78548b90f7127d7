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

const ALPHA = 0.05;

/**
 * Two-sided test for one outlier, Grubbs at 0.05: it flags 5 % of clean samples whatever their size. Null under three
 * values and when all are equal.
 *
 * Grubbs, Technometrics 11:1 (1969); critical value (n−1)/√n·√(t²/(n−2+t²)), t at α/(2n) (NIST/SEMATECH e-Handbook, 1.3.5.17).
 */
export function grubbs(values: readonly number[]): Grubbs | null {
  const found = moments(values);
  if (found === null || found.count < 3 || found.sd === null || found.sd === 0) return null;
  const { count, mean, sd } = found;
  const distances = values.map((value) => Math.abs(value - mean));
  const g = Math.max(...distances) / sd;
  const critical = grubbsCritical(count);
  return { index: distances.indexOf(Math.max(...distances)), g, critical, flagged: g > critical };
}

function grubbsCritical(count: number): number {
  const squared = tWithin(1 - ALPHA / count, count - 2) ** 2;
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt(squared / (count - 2 + squared));
}
