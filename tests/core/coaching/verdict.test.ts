import { describe, expect, it } from 'vitest';
import { comparisonAlpha, verdictOf, type Verdict } from '../../../core/coaching/verdict.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';

const first = { alpha: comparisonAlpha(1), smallest: 1 };
/** Five values with mean 0 and SD 1, as often as asked. */
const steady = (times: number, about = 0, sd = 1): number[] =>
  Array.from({ length: times }, () => [-1, -1, 0, 1, 1].map((value) => about + sd * value)).flat();
const verdict = (a: readonly number[], b: readonly number[], rule = first): Verdict => verdictOf([{ a: tallyOf(a), b: tallyOf(b) }], rule);

describe('the verdict on a new grip', () => {
  it('is too few under five throws of either, however far apart they are', () => {
    expect(verdict(steady(8, 9), steady(1).slice(1)).kind).toBe('too-few');
    expect(verdict(steady(1, 9).slice(1), steady(8)).kind).toBe('too-few');
    expect(verdict(steady(1, 9), steady(1)).kind).toBe('better');
  });

  it('is too few where nothing scatters, never a number that is none', () => {
    expect(verdict([2, 2, 2, 2, 2, 2], [0.5, 0.5, 0.5, 0.5, 0.5])).toEqual({ kind: 'too-few' });
    expect(verdict([], [])).toEqual({ kind: 'too-few' });
  });

  it('is too few where a late comparison asks more than the throws can give', () => {
    expect(verdict(steady(1, 9), steady(1)).kind).toBe('better');
    expect(verdict(steady(1, 9), steady(1), { alpha: comparisonAlpha(100), smallest: 1 }).kind).toBe('too-few');
  });

  it('is better for less miss and worse for more', () => {
    expect(verdict(steady(4, 1.5), steady(4)).kind).toBe('better');
    expect(verdict(steady(4), steady(4, 1.5)).kind).toBe('worse');
  });

  it('says that it matters only when all of the interval lies beyond the smallest difference that matters', () => {
    const matters = (apart: number): boolean => {
      const said = verdict(steady(4, apart), steady(4));
      if (said.kind !== 'better') throw new Error(said.kind);
      expect(said.matters).toBe(said.high < -1);
      return said.matters;
    };
    expect([1.5, 2.5].map(matters)).toEqual([false, true]);
    expect(verdict(steady(4), steady(4, 2.5))).toMatchObject({ kind: 'worse', matters: true });
  });

  it('is no difference that matters when the interval lies within it, which takes days of work', () => {
    expect(verdict(steady(8, 0, 1.4), steady(8, 0, 1.4)).kind).toBe('no-difference-that-matters');
    expect(verdict(steady(6, 0, 1.4), steady(6, 0, 1.4)).kind).toBe('not-settled');
    expect(verdict(steady(8, 0.3, 1.4), steady(8, 0, 1.4)).kind).toBe('not-settled');
  });

  it('shows beside the raw difference one that is pulled towards nothing', () => {
    const said = verdict(steady(4, 1.5), steady(4));
    if (said.kind !== 'better') throw new Error(said.kind);
    expect(said.difference).toBeCloseTo(-1.5, 12);
    expect(said.shrunken).toBeCloseTo(-1.5 * (10 / 11), 12);
    expect((said.low + said.high) / 2).toBeCloseTo(said.difference, 12);
  });
});

describe("an athlete's comparisons", () => {
  it('run at 0.0304 for the first, at less for each that follows, and at 0.05 for all together', () => {
    expect(comparisonAlpha(1).toFixed(4)).toBe('0.0304');
    expect(comparisonAlpha(3)).toBeCloseTo(comparisonAlpha(1) / 9, 15);
    const together = Array.from({ length: 100_000 }, (_, i) => comparisonAlpha(i + 1)).reduce((sum, alpha) => sum + alpha, 0);
    expect(together).toBeLessThan(0.05);
    expect(together).toBeGreaterThan(0.04999);
  });

  it('are numbered from one', () => {
    for (const k of [0, -1, 1.5, Number.NaN]) expect(() => comparisonAlpha(k)).toThrow(RangeError);
  });
});
