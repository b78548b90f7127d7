import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { grubbs } from '../../core/statistics/grubbs.ts';
import { tWithin } from '../../core/statistics/t-quantile.ts';

describe('the test of Grubbs', () => {
  // Published: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17: eight mass spectrometer measurements of a
  // uranium isotope, Tietjen & Moore, Technometrics 14:583 (1972). The handbook tests the largest value alone, at 0.05:
  // each tail of a two-sided test at 0.10.
  it('finds the eighth of the eight uranium measurements, G 2.4687 over 2.032', () => {
    const found = grubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 0.1)!;
    expect(found.index).toBe(7);
    expect(found.flagged).toBe(true);
    // 2.46876: the handbook prints four places cut off, not rounded.
    expect(Math.abs(found.g - 2.4687)).toBeLessThan(1e-4);
    expect(found.critical.toFixed(3)).toBe('2.032');
  });

  // Computed independently: @stdlib/stats-base-dists-t-quantile.
  it('has at 0.05, two-sided, the critical value that an independent quantile gives', () => {
    const values = [1, 2, 3, 4, 5, 6, 7, 99];
    const t = tQuantile(1 - 0.05 / 16, 6);
    expect(grubbs(values)!.critical).toBeCloseTo((7 / Math.sqrt(8)) * Math.sqrt(t ** 2 / (6 + t ** 2)), 9);
    expect(grubbs([1, 2])).toBeNull();
    expect(grubbs([3, 3, 3, 3])).toBeNull();
  });

  it('takes the t value of an independent library, far out in the tail too', () => {
    for (const share of [0.5, 0.9, 0.99, 1 - 0.05 / 8, 1 - 0.05 / 100]) {
      for (const df of [1, 2, 6, 28, 98]) expect(Math.abs(tWithin(share, df) / tQuantile((1 + share) / 2, df) - 1)).toBeLessThan(1e-9);
    }
  });
});
