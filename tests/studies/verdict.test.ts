import { describe, expect, it } from 'vitest';
import { comparisonAlpha } from '../../core/coaching/verdict.ts';
import { tallyOf } from '../../core/statistics/tally.ts';
import { randomFrom } from '../../simulators/random.ts';
import { firstClaims, glanceSaysBetter } from '../../studies/verdict/evening.ts';
import { anyClaim, foundWithin, middleCountB, play, type Cell } from '../../studies/verdict/evenings.ts';
import { ordinaryT, shipped, type Judge } from '../../studies/verdict/judge.ts';
import { alternating, aThenB, overDays } from '../../studies/verdict/order.ts';
import { oneMeasure } from '../../studies/verdict/throwing.ts';

const judges = [shipped({ alpha: comparisonAlpha(1), smallest: 1 }), ordinaryT()];
const evenings = (different: Parameters<typeof oneMeasure>[0]): Cell => ({ name: 'sample', order: aThenB(10, 40), throwing: oneMeasure(different), judges, fewest: 5 });
const chance = { seeds: [1, 2], runsPerSeed: 200 };

/** A small sample of what `npm run study` does with tens of thousands of evenings. */
describe('four hundred evenings of looking after every throw', () => {
  it('on which nothing differs: the verdict is rarely wrong, the ordinary t often', () => {
    const { claims } = play(evenings({}), chance);
    expect(anyClaim(claims[0]!).share).toBeLessThanOrEqual(0.025);
    expect(anyClaim(claims[1]!).share).toBeGreaterThan(0.1);
  });

  it('on which the new grip is better by 1.5 SD: most are found within 40 throws, and never as worse', () => {
    const [verdict] = play(evenings({ shift: -1.5 }), chance).claims;
    expect(foundWithin(verdict!, 40).share).toBeGreaterThan(0.78);
    expect(foundWithin(verdict!, 10).share).toBeGreaterThan(0.35);
    expect(verdict!.worse).toBe(0);
    expect(middleCountB(verdict!)).toBeGreaterThanOrEqual(5);
    expect(verdict!.difference).toBeLessThan(verdict!.shrunken);
  });

  it('come again from their seeds, and differ from those of other seeds', () => {
    const once = play(evenings({ shift: -1 }), chance);
    expect(play(evenings({ shift: -1 }), chance)).toEqual(once);
    expect(play(evenings({ shift: -1 }), { ...chance, seeds: [3, 4] })).not.toEqual(once);
  });
});

describe('one evening', () => {
  const order = overDays(2, 11, 14);
  const values = new Float64Array(order.length);
  oneMeasure({ dayShift: 1 })(randomFrom(5, 'evening'), order, values);

  it('shows a judge at each look exactly the throws so far, day by day, from the fifth of each', () => {
    const looks: number[] = [];
    const judge: Judge = (days) => {
      const thrown = days.reduce((sum, { a, b }) => sum + a.count + b.count, 0);
      looks.push(thrown);
      days.forEach((day, number) => {
        for (const trial of ['a', 'b'] as const) {
          const expected = tallyOf([...values.slice(0, thrown)].filter((_, place) => order[place]!.trial === trial && order[place]!.day === number));
          expect(day[trial].count).toBe(expected.count);
          expect(day[trial].mean).toBeCloseTo(expected.mean, 12);
          expect(day[trial].squares).toBeCloseTo(expected.squares, 12);
        }
      });
      return null;
    };
    expect(firstClaims(order, values, [judge], 5)).toEqual([null]);
    // Six of A and five of B: the first eleven throws.
    expect(looks).toEqual(Array.from({ length: order.length - 10 }, (_, i) => 11 + i));
  });

  it('ends for a judge with the first claim', () => {
    let asked = 0;
    const claim = { kind: 'worse', difference: 1, shrunken: 0.5 } as const;
    const judge: Judge = (days) => (days[0]!.b.count >= 6 && (asked += 1) > 0 ? claim : null);
    expect(firstClaims(order, values, [judge], 5)).toEqual([{ ...claim, countB: 6 }]);
    expect(asked).toBe(1);
  });

  it('of blocks alternates five and five', () => {
    expect(alternating(10).map(({ trial }) => trial).join('')).toBe('aaaaabbbbbaaaaabbbbb');
  });

  it('ends a glance with the third throw of B, and keeps the grip whose last three missed by less', () => {
    const thrown = aThenB(5, 4);
    expect(glanceSaysBetter(thrown, [9, 9, 1, 1, 1, 0, 1, 1, 99])).toBe(true);
    expect(glanceSaysBetter(thrown, [9, 9, 1, 1, 1, 2, 1, 1, -99])).toBe(false);
  });
});
