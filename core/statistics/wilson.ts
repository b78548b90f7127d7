import { NORMAL_975 } from './closed-quantiles.ts';

export interface ShareInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % Wilson score interval of a share, without continuity correction. It describes; no verdict may rest on it, for it
 * does not hold when looked at after every throw. Null when n is 0. Throws RangeError unless 0 ≤ successes ≤ n, both whole.
 *
 * Wilson, J. American Statistical Association 22:209 (1927); Newcombe, Statistics in Medicine 17:857 (1998).
 */
export function wilsonInterval(successes: number, n: number): ShareInterval | null {
  if (!Number.isInteger(successes) || !Number.isInteger(n) || successes < 0 || successes > n) {
    throw new RangeError(`${successes} of ${n} is not a share`);
  }
  if (n === 0) return null;
  const share = successes / n;
  const z2 = NORMAL_975 ** 2;
  const middle = share + z2 / (2 * n);
  const reach = NORMAL_975 * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n));
  const scale = 1 + z2 / n;
  return {
    share,
    low: successes === 0 ? 0 : (middle - reach) / scale,
    high: successes === n ? 1 : (middle + reach) / scale,
  };
}
