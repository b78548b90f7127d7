import { describe, expect, it } from 'vitest';
import { ewma, ewmaReach } from '../../core/statistics/ewma.ts';
import { individuals } from '../../core/statistics/individuals.ts';

// Published: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4 (2013): λ 0.3, target 50, s 2.0539, 3 sigma.
describe('the moving average of NIST', () => {
  const values = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const published = [50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];

  it('follows its twenty values to two places', () => {
    const found = ewma(values, 0.3, 50);
    expect(found).toHaveLength(20);
    found.forEach((average, i) => expect(Math.abs(average - published[i]!)).toBeLessThanOrEqual(0.005 + 1e-9));
  });

  it('has its limits at 52.5884 and 47.4115', () => {
    const reach = ewmaReach(2.0539, 0.3);
    expect(Math.abs(50 + reach - 52.5884)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(50 - reach - 47.4115)).toBeLessThanOrEqual(1e-4);
  });
});

// Published: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (2013): ten batches.
it('the chart of single values of NIST has its centre at 50.81 and its limits at 55.8041 and 45.8159', () => {
  const found = individuals([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])!;
  expect(found.centre.toFixed(2)).toBe('50.81');
  expect(found.meanMovingRange.toFixed(4)).toBe('1.8778');
  expect(Math.abs(found.high - 55.8041)).toBeLessThanOrEqual(1e-4);
  expect(Math.abs(found.low - 45.8159)).toBeLessThanOrEqual(1e-4);
});
