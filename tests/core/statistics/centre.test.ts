import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hodgesLehmann, median } from '../../../core/statistics/centre.ts';
import { moments } from '../../../core/statistics/moments.ts';
import { seededNormal } from './seeded-normals.ts';

const values = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 1, maxLength: 25 });

describe('centres of a fastball baseline', () => {
  it('no throws have no centre', () => {
    expect(median([])).toBeNull();
    expect(hodgesLehmann([])).toBeNull();
  });

  it('the median is the middle throw, or halfway between the two in the middle, in any order', () => {
    expect(median([41, 38, 40])).toBe(40);
    expect(median([41, 38, 40, 39])).toBe(39.5);
    expect(median([-1, 10, 9, -2])).toBe(4);
  });

  it('Hodges and Lehmann take the median of the pair means, each throw paired with itself too', () => {
    // Pair means by hand: 1, 1.5, 2, 5, 5.5 (twice the pairs of 10), 10.
    expect(hodgesLehmann([1, 2, 10])).toBe((2 + 5.5) / 2);
    expect(hodgesLehmann([7])).toBe(7);
    expect(hodgesLehmann([3, 5])).toBe(4);
  });

  it('a fastball that slips moves it by at most the spread of the others, however far it slips', () => {
    const clean = [40.1, 40.3, 39.9, 40.0];
    const slipped = hodgesLehmann([...clean, -1000])!;
    expect(slipped).toBeGreaterThanOrEqual(39.9);
    expect(slipped).toBeLessThanOrEqual(40.3);
    expect(moments([...clean, -1000])!.mean).toBeLessThan(-100);
  });

  it.each([{ centre: median }, { centre: hodgesLehmann }])('$centre.name follows a shift and a change of unit', ({ centre }) => {
    fc.assert(
      fc.property(values, fc.double({ min: -100, max: 100, noNaN: true }), fc.constantFrom(-1, 0.0254, 3.28084), (throws, shift, factor) => {
        const moved = centre(throws.map((value) => value * factor + shift))!;
        expect(Math.abs(moved - (centre(throws)! * factor + shift))).toBeLessThan(1e-11);
      }),
      { seed: 21 },
    );
  });

  it('on clean throws it scatters hardly more than the mean, and less than the median', () => {
    const normal = seededNormal(22);
    const samples = Array.from({ length: 20_000 }, () => Array.from({ length: 10 }, normal));
    const scatterOf = (centre: (sample: number[]) => number | null): number => moments(samples.map((sample) => centre(sample)!))!.sd!;
    const [ofMean, ofHodgesLehmann, ofMedian] = [scatterOf((sample) => moments(sample)!.mean), scatterOf(hodgesLehmann), scatterOf(median)];
    expect(ofHodgesLehmann / ofMean).toBeLessThan(1.06);
    expect(ofMedian / ofHodgesLehmann).toBeGreaterThan(1.1);
  });
});
