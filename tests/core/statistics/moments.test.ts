import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covariance } from '../../../core/statistics/covariance.ts';
import { moments } from '../../../core/statistics/moments.ts';
import { relativeGap } from './relative-gap.ts';

const speeds = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 2, maxLength: 40 });

describe('mean and scatter of a few throws', () => {
  it('no throws have none', () => {
    expect(moments([])).toBeNull();
  });

  it('one throw has a mean and no scatter', () => {
    expect(moments([37.5])).toEqual({ count: 1, mean: 37.5, sd: null, standardErrorOfMean: null });
  });

  it('throws that read alike scatter by exactly zero, whatever the reading', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((x) => !Object.is(x, -0)), fc.integer({ min: 2, max: 30 }), (reading, count) => {
        expect(moments(Array<number>(count).fill(reading))).toEqual({ count, mean: reading, sd: 0, standardErrorOfMean: 0 });
      }),
      { seed: 11 },
    );
  });

  it('adding the same to every throw moves the mean by it and leaves the scatter', () => {
    fc.assert(
      fc.property(speeds, fc.double({ min: -1000, max: 1000, noNaN: true }), (values, shift) => {
        const [before, after] = [moments(values)!, moments(values.map((value) => value + shift))!];
        expect(Math.abs(after.mean - before.mean - shift)).toBeLessThan(1e-11);
        expect(Math.abs(after.sd! - before.sd!)).toBeLessThan(1e-11);
      }),
      { seed: 12 },
    );
  });

  it('in another unit mean, scatter and error scale alike, a negative factor only turning the mean', () => {
    fc.assert(
      fc.property(speeds, fc.constantFrom(-3.28084, 0.0254, 2.23694, 1e6), (values, factor) => {
        const [before, after] = [moments(values)!, moments(values.map((value) => value * factor))!];
        expect(Math.abs(after.mean - before.mean * factor)).toBeLessThan(1e-12 * 50 * Math.abs(factor));
        expect(Math.abs(after.sd! - before.sd! * Math.abs(factor))).toBeLessThan(1e-12 * 50 * Math.abs(factor));
        expect(after.standardErrorOfMean).toBe(after.sd! / Math.sqrt(values.length));
      }),
      { seed: 13 },
    );
  });

  it('one measure held against itself varies with itself by the square of its SD', () => {
    fc.assert(
      fc.property(speeds, (values) => {
        const about = covariance(values.map((value) => [value, value] as const))!;
        const { sd, mean } = moments(values)!;
        expect(about.centre).toEqual([mean, mean]);
        expect(about.xy).toBe(about.xx);
        expect(relativeGap(about.xx, sd! ** 2)).toBeLessThan(1e-12);
      }),
      { seed: 14 },
    );
  });

  it('one throw has no covariance', () => {
    expect(covariance([[0.1, 0.2]])).toBeNull();
  });
});
