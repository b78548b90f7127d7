import { NORMAL_975 } from './closed-quantiles.ts';
import { risingRoot } from './rising-root.ts';

/** From here on the expansion in 1/df is right to 1e-10, and the finite sum only slower. */
const LARGE_DF = 200;
/** By the finite sums, each worked out once: every window asks for the same few again at every throw. */
const known = new Map<number, number>();

/**
 * The t value between whose negative and positive lie 95 % of Student's t with `df` degrees of freedom: what an interval
 * of a mean multiplies its standard error by. Throws RangeError unless `df` is a whole number of at least 1.
 *
 * Abramowitz & Stegun, 26.7.3–4 (finite sums) and 26.7.5 (expansion).
 */
export function tQuantile975(df: number): number {
  checkFreedom(df);
  if (df >= LARGE_DF) return expansion(NORMAL_975, df);
  const quantile = known.get(df) ?? tWithin(0.95, df);
  known.set(df, quantile);
  return quantile;
}

/**
 * The t value between whose negative and positive lies the given share, in (0, 1), of Student's t; the same sums, so its
 * cost grows with `df`. Throws as `tQuantile975` does.
 */
export function tWithin(share: number, df: number): number {
  checkFreedom(df);
  const theta = risingRoot((angle) => shareWithin(angle, df) - share, 0, Math.PI / 2);
  return Math.sqrt(df) * Math.tan(theta);
}

function checkFreedom(df: number): void {
  if (!Number.isInteger(df) || df < 1) throw new RangeError(`degrees of freedom must be a whole number of at least 1, not ${df}`);
}

/** Share of t between ∓√df·tan θ. */
function shareWithin(theta: number, df: number): number {
  const cosine = Math.cos(theta);
  const odd = df % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = df === 1 ? 0 : term;
  for (let k = odd ? 2 : 1; k <= df - 3; k += 2) {
    term *= (k / (k + 1)) * cosine * cosine;
    sum += term;
  }
  const share = Math.sin(theta) * sum;
  return odd ? (2 / Math.PI) * (theta + share) : share;
}

function expansion(z: number, df: number): number {
  const g1 = (z ** 3 + z) / 4;
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const g4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160;
  return z + g1 / df + g2 / df ** 2 + g3 / df ** 3 + g4 / df ** 4;
}
