import { risingRoot } from './rising-root.ts';

/** Quantile of χ² with two degrees of freedom: −2 ln(1 − q). */
export const chiSquare2Quantile = (q: number): number => -2 * Math.log1p(-q);

/** Quantile of F with 2 and `df` degrees of freedom: (df/2)·((1 − q)^(−2/df) − 1). */
export const f2Quantile = (q: number, df: number): number => (df / 2) * Math.expm1((-2 / df) * Math.log1p(-q));

/** Φ⁻¹(0.975). */
export const NORMAL_975 = 1.959963984540054;

/** From here on the expansion is right to 1e-10 of the quantile, and the finite sum only slower. */
const MANY_PAIRS = 100;

interface Tails {
  readonly low: number;
  readonly high: number;
}
/** By the finite sum, each worked out once: there are as many as are fewer than many. */
const few = new Map<number, Tails>();

/** Where the lowest fortieth of χ² with 2·`pairs` degrees of freedom ends and the highest begins, `pairs` whole and at least 1. */
export function chiSquareEvenTails(pairs: number): Tails {
  if (pairs >= MANY_PAIRS) return { low: chiSquareExpansion(-NORMAL_975, 2 * pairs), high: chiSquareExpansion(NORMAL_975, 2 * pairs) };
  const tails = few.get(pairs) ?? { low: chiSquareEvenQuantile(0.025, pairs), high: chiSquareEvenQuantile(0.975, pairs) };
  few.set(pairs, tails);
  return tails;
}

/** Goldberg & Levine, Annals of Mathematical Statistics 17:216 (1946): the quantile by the normal one and powers of 1/√df. */
function chiSquareExpansion(z: number, df: number): number {
  const root = Math.sqrt(df);
  return df
    + Math.SQRT2 * z * root
    + (2 / 3) * (z ** 2 - 1)
    + (z ** 3 - 7 * z) / (9 * Math.SQRT2 * root)
    - (6 * z ** 4 + 14 * z ** 2 - 32) / (405 * df)
    + (9 * z ** 5 + 256 * z ** 3 - 433 * z) / (4860 * Math.SQRT2 * df * root)
    + (12 * z ** 6 - 243 * z ** 4 - 923 * z ** 2 + 1472) / (25515 * df ** 2)
    - (3753 * z ** 7 + 4353 * z ** 5 - 289517 * z ** 3 - 289717 * z) / (9185400 * Math.SQRT2 * df ** 2 * root);
}

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
