import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import fQuantile from '@stdlib/stats-base-dists-f-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { chiSquare2Quantile, chiSquareEvenQuantile, chiSquareEvenTails, f2Quantile } from '../../core/statistics/closed-quantiles.ts';
import { tQuantile975 } from '../../core/statistics/t-quantile.ts';

const shares = [0.025, 0.5, 0.9, 0.95, 0.975, 0.999];
const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('Student t at 97.5 %', () => {
  // Published: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, to three places.
  it.each([[2, 4.303], [5, 2.571], [10, 2.228], [15, 2.131], [20, 2.086], [30, 2.042]])(
    'with %i degrees of freedom is the %f of NIST',
    (df, published) => {
      expect(tQuantile975(df).toFixed(3)).toBe(published.toFixed(3));
    },
  );

  // Computed independently: @stdlib/stats-base-dists-t-quantile.
  it('agrees with an independent library to 1e-9 for every df up to 400 and for a few far above', () => {
    const dfs = [...Array.from({ length: 400 }, (_, i) => i + 1), 1000, 10_000, 1_000_000];
    const off = dfs.filter((df) => !(Math.abs(tQuantile975(df) - tQuantile(0.975, df)) < 1e-9));
    expect(off).toEqual([]);
  });
});

// Computed independently: @stdlib/stats-base-dists-chisquare-quantile and -f-quantile.
describe('the quantiles of two measures', () => {
  it.each(shares)('χ² and F at share %f agree with an independent library', (q) => {
    expect(relative(chiSquare2Quantile(q), chiSquareQuantile(q, 2))).toBeLessThan(1e-12);
    for (const df of [1, 2, 3, 8, 18, 98]) expect(relative(f2Quantile(q, df), fQuantile(q, 2, df))).toBeLessThan(1e-9);
    for (const pairs of [1, 2, 3, 8, 18, 98, 400]) {
      expect(relative(chiSquareEvenQuantile(q, pairs), chiSquareQuantile(q, 2 * pairs))).toBeLessThan(1e-9);
    }
  });

  it('the outer fortieths of χ² agree with it on both sides of where the expansion takes over, and far above with the finite sum', () => {
    for (const pairs of [1, 3, 98, 99, 100, 101, 400]) {
      const { low, high } = chiSquareEvenTails(pairs);
      expect(relative(low, chiSquareQuantile(0.025, 2 * pairs))).toBeLessThan(1e-9);
      expect(relative(high, chiSquareQuantile(0.975, 2 * pairs))).toBeLessThan(1e-9);
    }
    for (const pairs of [1000, 5000]) expect(relative(chiSquareEvenTails(pairs).low, chiSquareEvenQuantile(0.025, pairs))).toBeLessThan(1e-10);
  });
});
