import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlookOf, type Outlook } from '../../../core/coaching/outlook.ts';
import { comparisonAlpha, verdictOf } from '../../../core/coaching/verdict.ts';
import { anytimeDifference } from '../../../core/statistics/anytime-difference.ts';
import { blockedDifference, type ComparedDay } from '../../../core/statistics/blocked-difference.ts';
import { tallyOf, type Tally } from '../../../core/statistics/tally.ts';
import { mayThrow } from './compared-throws.ts';

const rule = { alpha: comparisonAlpha(1), smallest: 1 };
const tally = (count: number, mean: number, sd = 1): Tally => ({ count, mean, squares: sd ** 2 * Math.max(0, count - 1) });
const day = (a: Tally, b: Tally): ComparedDay => ({ a, b });
const none = tallyOf([]);
const today = (left = 30) => ({ index: 0, mayThrow: mayThrow(left) });
const more = (outlook: Outlook) => {
  if (outlook.kind !== 'more') throw new Error(outlook.kind);
  return outlook;
};

describe('how many more throws it takes', () => {
  it('is nothing once it is settled, better, worse or no difference that matters', () => {
    expect(outlookOf([day(tally(20, 0), tally(20, -3))], rule, today())).toEqual({ kind: 'settled' });
    expect(outlookOf([day(tally(20, 0), tally(20, 3))], rule, today())).toEqual({ kind: 'settled' });
    expect(outlookOf([day(tally(80, 0), tally(80, 0))], rule, today())).toEqual({ kind: 'settled' });
  });

  it('is never told to an arm that may not throw, whatever the verdict lacks', () => {
    const stopped = { index: 0, mayThrow: null };
    expect(outlookOf([day(tally(10, 0), tally(10, -0.8))], rule, stopped)).toEqual({ kind: 'stopped' });
    expect(outlookOf([day(tally(3, 0), tally(2, 0))], rule, stopped)).toEqual({ kind: 'stopped' });
    expect(outlookOf([], rule, stopped)).toEqual({ kind: 'stopped' });
  });

  // The same throws, so many more of each with the same scatter: the shrunken difference of now is held against the interval of then.
  it('is the least equal number of each that settles it at the present spread and difference', () => {
    const counts = fc.integer({ min: 5, max: 30 });
    fc.assert(
      fc.property(counts, counts, fc.double({ min: -1.5, max: 1.5, noNaN: true }), fc.double({ min: 0.7, max: 1.4, noNaN: true }), (a, b, apart, sd) => {
        const days = [day(tally(a, 0), tally(b, apart, sd))];
        const now = verdictOf(days, rule);
        fc.pre(now.kind === 'not-settled');
        const variance = blockedDifference(days)!.variance;
        const settles = (plus: number): boolean => {
          const freedom = a + b + 2 * plus - 2;
          const later = { ...blockedDifference([day(tally(a + plus, 0), tally(b + plus, 0))])!, variance, varianceA: 1, varianceB: sd ** 2 };
          expect(later.design.freedom).toBe(freedom);
          const { high } = anytimeDifference(later, rule.alpha)!;
          return Math.abs(now.shrunken) > high - later.difference || Math.abs(now.difference) + high - later.difference <= 1;
        };
        const { each } = more(outlookOf(days, rule, today()));
        if (each === null) expect(settles(500)).toBe(false);
        else expect([settles(each - 1), settles(each)]).toEqual([false, true]);
      }),
      { seed: 101 },
    );
  });

  it('is more for a split that scatters twice as much', () => {
    const changeup = more(outlookOf([day(tally(10, 0), tally(10, -0.8))], rule, today()));
    const split = more(outlookOf([day(tally(10, 0, 2), tally(10, -0.8, 2))], rule, today()));
    expect(split.each!).toBeGreaterThan(2 * changeup.each!);
  });

  it('fits today only when both blocks go into what is left of the day and of the planned bullpen', () => {
    const days = [day(tally(10, 0), tally(10, -1.1))];
    const { each } = more(outlookOf(days, rule, today(500)));
    expect(more(outlookOf(days, rule, today(2 * each!))).fitsToday).toBe(true);
    expect(more(outlookOf(days, rule, today(2 * each! - 1))).fitsToday).toBe(false);
    expect(more(outlookOf(days, rule, today(2 * each! - 1))).each).toBe(each);
  });

  it('cannot be reached with B alone where A is too short, and can where A is long', () => {
    expect(more(outlookOf([day(tally(5, 0), tally(20, -0.9))], rule, today())).ofBAlone).toBeNull();
    expect(more(outlookOf([day(tally(40, 0), tally(6, -0.9))], rule, today())).ofBAlone).toBeGreaterThan(0);
  });

  it('begins a new day with throws of both: B alone on a day without A tells nothing', () => {
    const yesterday = [day(tally(40, 0), tally(8, -0.8))];
    const fresh = more(outlookOf(yesterday, rule, { index: null, mayThrow: mayThrow(30) }));
    const same = more(outlookOf(yesterday, rule, today()));
    expect(fresh.ofBAlone).toBeNull();
    expect(same.ofBAlone).toBeGreaterThan(0);
    expect(fresh.each!).toBeGreaterThanOrEqual(same.each!);
  });

  it('is what is missing to five of each while they are too few', () => {
    expect(outlookOf([day(tally(5, 0), tally(2, 0))], rule, today())).toEqual({ kind: 'more', until: 'verdict', each: 3, ofBAlone: 3, fitsToday: true });
    expect(more(outlookOf([], rule, { index: null, mayThrow: mayThrow(30) })).each).toBe(5);
    expect(more(outlookOf([day(tally(3, 0), none)], rule, today())).each).toBe(5);
  });

  it('is not known where throws do not lack but scatter', () => {
    expect(outlookOf([day(tally(9, 0, 0), tally(9, 1, 0))], rule, today())).toEqual({ kind: 'more', until: 'verdict', each: null, ofBAlone: null, fitsToday: false });
  });

  it('is beyond any bullpen where the difference is just the one that matters', () => {
    const barely = { ...rule, smallest: 0.05 };
    expect(more(outlookOf([day(tally(10, 0), tally(10, 0.01))], barely, today())).each).toBeNull();
  });
});
