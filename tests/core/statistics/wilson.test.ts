import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../../core/statistics/wilson.ts';

const hitsOf = fc.integer({ min: 1, max: 500 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

describe('share of throws on target', () => {
  it('no throws have no share', () => {
    expect(wilsonInterval(0, 0)).toBeNull();
  });

  it('refuses more hits than throws, and half a hit', () => {
    for (const [hits, throws] of [[4, 3], [-1, 3], [1.5, 3], [0, -1]] as const) {
      expect(() => wilsonInterval(hits, throws)).toThrow(RangeError);
    }
  });

  it('lies within 0 and 1, holds the share, and mirrors when hits and misses trade places', () => {
    fc.assert(
      fc.property(hitsOf, ([hits, n]) => {
        const { share, low, high } = wilsonInterval(hits, n)!;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(share);
        expect(high).toBeGreaterThanOrEqual(share);
        expect(high).toBeLessThanOrEqual(1);
        expect(high).toBeGreaterThan(low);
        const misses = wilsonInterval(n - hits, n)!;
        expect(misses.low).toBeCloseTo(1 - high, 12);
      }),
      { seed: 61 },
    );
  });

  it('narrows as throws add up at the same share', () => {
    const widths = [5, 10, 20, 100].map((n) => wilsonInterval((n * 3) / 5, n)!).map(({ low, high }) => high - low);
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(widths[3]).toBeLessThan(widths[0]! / 3);
  });
});
