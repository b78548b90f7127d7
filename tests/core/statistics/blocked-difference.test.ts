import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anytimeDifference, spreadChanged } from '../../../core/statistics/anytime-difference.ts';
import { anytimeRadius } from '../../../core/statistics/anytime-t.ts';
import { blockedDifference, type ComparedDay } from '../../../core/statistics/blocked-difference.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';
import { relativeGap } from './relative-gap.ts';

const day = (a: readonly number[], b: readonly number[]): ComparedDay => ({ a: tallyOf(a), b: tallyOf(b) });

const millimetres = fc.integer({ min: -2000, max: 2000 }).map((value) => value / 1000);
const throws = (fewest: number) => fc.array(millimetres, { minLength: fewest, maxLength: 15 });
const days = fc.array(fc.tuple(throws(2), throws(2)), { minLength: 1, maxLength: 5 });
const scatter = (values: readonly number[]): boolean => new Set(values).size > 1;

/** Least squares of "day + trial" by the textbook: trial and values freed from their day means, then a line through 0. */
function leastSquares(sets: readonly (readonly [readonly number[], readonly number[]])[]) {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const freed = sets.flatMap(([a, b]) => {
    const [overall, share] = [mean([...a, ...b]), b.length / (a.length + b.length)];
    return [...a.map((value) => [-share, value - overall] as const), ...b.map((value) => [1 - share, value - overall] as const)];
  });
  const sum = (of: (pair: readonly [number, number]) => number): number => freed.reduce((total, pair) => total + of(pair), 0);
  const [xx, xy, yy] = [sum(([x]) => x * x), sum(([x, y]) => x * y), sum(([, y]) => y * y)];
  return { difference: xy / xx, effectiveN: xx, variance: (yy - xy ** 2 / xx) / (freed.length - sets.length - 1) };
}

describe('two trials with the day as a block', () => {
  it('on one day are the two-sample comparison to the last digit', () => {
    fc.assert(
      fc.property(throws(2), throws(2), (a, b) => {
        fc.pre(scatter(a));
        const [one, other] = [tallyOf(a), tallyOf(b)];
        const found = blockedDifference([day(a, b)])!;
        const effectiveN = (a.length * b.length) / (a.length + b.length);
        const freedom = a.length + b.length - 2;
        expect(found.difference).toBe(other.mean - one.mean);
        expect(found.design.effectiveN).toBe(effectiveN);
        expect(found.design.freedom).toBe(freedom);
        expect(found.variance).toBe((one.squares + other.squares) / freedom);
        fc.pre(!spreadChanged(found));
        const radius = Math.sqrt(found.variance) * anytimeRadius({ effectiveN, freedom, alpha: 0.05 });
        const interval = anytimeDifference(found, 0.05);
        if (radius === Infinity) expect(interval).toBeNull();
        else expect([interval!.low, interval!.high]).toEqual([found.difference - radius, found.difference + radius]);
      }),
      { seed: 91 },
    );
  });

  it('on any days are the least squares of "day + trial"', () => {
    fc.assert(
      fc.property(days, (sets) => {
        fc.pre(sets.some(([a]) => scatter(a)));
        const found = blockedDifference(sets.map(([a, b]) => day(a, b)))!;
        const expected = leastSquares(sets);
        expect(Math.abs(found.difference - expected.difference)).toBeLessThan(1e-12);
        expect(relativeGap(found.design.effectiveN, expected.effectiveN)).toBeLessThan(1e-12);
        expect(Math.abs(found.variance - expected.variance)).toBeLessThan(1e-10);
      }),
      { seed: 92 },
    );
  });

  it('do not change when a day shifts both, nor by a day that holds one of them', () => {
    const monday = day([0.1, 0.4, 0.2], [0.5, 0.3]);
    const tuesday = day([0.7, 0.9], [0.6, 1.2, 0.8]);
    const sailing = day([5.7, 5.9], [5.6, 6.2, 5.8]);
    const onlyA = day([9, 11, 10], []);
    const plain = blockedDifference([monday, tuesday])!;
    for (const other of [blockedDifference([monday, sailing])!, blockedDifference([onlyA, monday, tuesday])!]) {
      expect(other.design).toEqual(plain.design);
      expect(other.difference).toBeCloseTo(plain.difference, 12);
      expect(other.variance).toBeCloseTo(plain.variance, 12);
    }
  });

  it('say nothing without a common day, without freedom and without scatter', () => {
    expect(blockedDifference([])).toBeNull();
    expect(blockedDifference([day([1, 2, 3], []), day([], [1, 2, 3])])).toBeNull();
    expect(blockedDifference([day([1], [2])])).toBeNull();
    expect(blockedDifference([day([0.1, 0.1, 0.1], [0.3, 0.3])])).toBeNull();
    expect(blockedDifference([day([0.1, 0.1], [0.3, 0.3]), day([0.7, 0.7], [0.9, 0.9, 0.9])])).toBeNull();
  });

  it('are symmetric, and follow shift and unit', () => {
    fc.assert(
      fc.property(throws(5), throws(5), millimetres, fc.constantFrom(0.0254, 39.37), (a, b, shift, unit) => {
        fc.pre(scatter(a));
        const before = anytimeDifference(blockedDifference([day(a, b)])!, 0.0304);
        fc.pre(before !== null);
        const turned = anytimeDifference(blockedDifference([day(b, a)])!, 0.0304)!;
        expect([turned.low, turned.high, turned.shrunken].map((value) => -value)).toEqual([before.high, before.low, before.shrunken]);
        const moved = (values: readonly number[]) => values.map((value) => unit * (value + shift));
        const after = anytimeDifference(blockedDifference([day(moved(a), moved(b))])!, 0.0304)!;
        for (const edge of ['low', 'high', 'shrunken'] as const) expect(Math.abs(after[edge] - unit * before[edge])).toBeLessThan(1e-9);
      }),
      { seed: 93 },
    );
  });
});

describe('a spread that changed', () => {
  const steady = [-1, -0.5, 0, 0.5, 1, -1, -0.5, 0, 0.5, 1];
  const wild = [-4, 4, 3, -3, 0];

  it('widens the interval by the unequal-variance estimate, never narrows it', () => {
    const [few, many] = [blockedDifference([day(steady, wild)])!, blockedDifference([day(steady, [...wild, ...wild, ...wild, ...wild, ...wild, ...wild])])!];
    for (const found of [few, many]) {
      expect(spreadChanged(found)).toBe(true);
      const { effectiveN, freedom, countA, countB } = found.design;
      const unequal = found.varianceA! / countA + found.varianceB! / countB;
      const scale = Math.sqrt(Math.max(unequal, found.variance / effectiveN) * effectiveN);
      const { low, high } = anytimeDifference(found, 0.05)!;
      expect(relativeGap((high - low) / 2, scale * anytimeRadius({ effectiveN, freedom, alpha: 0.05 }))).toBeLessThan(1e-12);
    }
  });

  it('is one more than half again as wide or as narrow', () => {
    const times = (factor: number) => blockedDifference([day(steady, steady.map((value) => value * factor))])!;
    expect([0.6, 0.7, 1, 1.4, 1.6].map((factor) => spreadChanged(times(factor)))).toEqual([true, false, false, false, true]);
  });
});
