import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tQuantile975 } from '../../../core/statistics/t-quantile.ts';
import { interval95OfMean, summarise } from '../../../core/statistics/window.ts';
import { seededNormal } from './seeded-normals.ts';

describe('one measure over a window of throws', () => {
  it('fewer than two throws are too few, and it says how many it needs', () => {
    expect(summarise([])).toEqual({ kind: 'too-few', count: 0, need: 2 });
    expect(summarise([35.2])).toEqual({ kind: 'too-few', count: 1, need: 2 });
    expect(interval95OfMean([35.2])).toBeNull();
  });

  it('a device that repeats one reading does not make the mean certain', () => {
    expect(summarise([35.2, 35.2, 35.2])).toEqual({ kind: 'too-few', count: 3, need: 4 });
    expect(interval95OfMean([35.2, 35.2, 35.2])).toBeNull();
  });

  it('five throws by hand: mean 3, SD √2.5, interval 3 ± 2.776·√0.5', () => {
    const found = summarise([1, 2, 3, 4, 5]);
    if (found.kind !== 'estimate') throw new Error(found.kind);
    expect(found.count).toBe(5);
    expect(found.mean).toBe(3);
    expect(found.sd).toBeCloseTo(Math.sqrt(2.5), 12);
    expect(found.standardError).toBeCloseTo(Math.sqrt(0.5), 12);
    expect(found.high).toBeCloseTo(3 + 2.7764451 * Math.sqrt(0.5), 6);
    expect(interval95OfMean([1, 2, 3, 4, 5])).toEqual({ low: found.low, high: found.high });
  });

  it.each([2, 3, 5, 10])('the interval of %i normal throws holds the true mean 95 times in 100', (count) => {
    const normal = seededNormal(80 + count);
    let held = 0;
    for (let run = 0; run < 20_000; run += 1) {
      const { low, high } = interval95OfMean(Array.from({ length: count }, () => 35 + normal()))!;
      if (low <= 35 && 35 <= high) held += 1;
    }
    expect(Math.abs(held / 20_000 - 0.95)).toBeLessThan(0.0062);
  });

  it('the interval moves with a shift and stretches with the unit', () => {
    const values = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(values, fc.double({ min: -100, max: 100, noNaN: true }), fc.constantFrom(0.0254, 2.23694), (throws, shift, factor) => {
        const before = interval95OfMean(throws);
        fc.pre(before !== null && before.high - before.low > 1e-3);
        const after = interval95OfMean(throws.map((value) => value * factor + shift))!;
        expect(Math.abs(after.low - (before.low * factor + shift))).toBeLessThan(1e-9);
        expect(Math.abs(after.high - (before.high * factor + shift))).toBeLessThan(1e-9);
      }),
      { seed: 91 },
    );
  });

  it('t falls towards the normal 1.96 with every further throw, without a step where the formula changes', () => {
    const quantiles = Array.from({ length: 300 }, (_, i) => tQuantile975(i + 1));
    quantiles.slice(1).forEach((quantile, i) => expect(quantile).toBeLessThan(quantiles[i]!));
    expect(quantiles[299]).toBeGreaterThan(1.9599639845);
    const jump = (at: number): number => quantiles[at - 1]! - quantiles[at]!;
    expect(jump(199) / jump(198)).toBeCloseTo(1, 1);
  });

  it('t refuses degrees of freedom no sample can have', () => {
    for (const df of [0, -1, 2.5, Number.NaN]) expect(() => tQuantile975(df)).toThrow(RangeError);
  });
});
