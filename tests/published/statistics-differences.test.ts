import { describe, expect, it } from 'vitest';
import { blockedDifference, unequalVariance } from '../../core/statistics/blocked-difference.ts';

// Published: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3: miles per gallon of 249 American and 79 Japanese
// cars (auto83b.dat), pooled and unequal-variance t. The printed means and deviations carry five places.
describe('two samples of NIST', () => {
  const sample = (count: number, mean: number, sd: number) => ({ count, mean, squares: sd ** 2 * (count - 1) });
  const found = blockedDifference([{ a: sample(79, 30.48101, 6.10771), b: sample(249, 20.14458, 6.4147) }])!;

  it('differ by the pooled t of −12.62059 with 326 degrees of freedom', () => {
    expect(found.design.freedom).toBe(326);
    expect(Math.abs(found.difference / Math.sqrt(found.variance / found.design.effectiveN) + 12.62059)).toBeLessThan(2e-5);
  });

  it('differ by the unequal-variance t of −12.94627', () => {
    expect(Math.abs(found.difference / Math.sqrt(unequalVariance(found, found.design)!) + 12.94627)).toBeLessThan(2e-5);
  });
});
