import { risingRoot } from './rising-root.ts';

/** Quantile of χ² with two degrees of freedom: −2 ln(1 − q). */
export const chiSquare2Quantile = (q: number): number => -2 * Math.log1p(-q);

/** Quantile of F with 2 and `df` degrees of freedom: (df/2)·((1 − q)^(−2/df) − 1). */
export const f2Quantile = (q: number, df: number): number => (df / 2) * Math.expm1((-2 / df) * Math.log1p(-q));

/**
 * Quantile of χ² with 2·`pairs` degrees of freedom, `pairs` whole and at least 1: its distribution is a finite sum,
 * 1 − e^(−x/2)·Σ (x/2)^k/k! for k < pairs (Abramowitz & Stegun, 26.4.21).
 */
export function chiSquareEvenQuantile(q: number, pairs: number): number {
  const mean = 2 * pairs;
  const farAbove = mean + 20 * Math.sqrt(2 * mean) + 40;
  return risingRoot((x) => chiSquareEvenShare(x / 2, pairs) - q, 0, farAbove);
}

function chiSquareEvenShare(half: number, pairs: number): number {
  let logTerm = -half;
  let above = Math.exp(logTerm);
  for (let k = 1; k < pairs; k += 1) {
    logTerm += Math.log(half / k);
    above += Math.exp(logTerm);
  }
  return 1 - above;
}
