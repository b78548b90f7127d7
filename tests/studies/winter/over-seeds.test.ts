import { describe, expect, it } from 'vitest';
import { alikeSection } from '../../../studies/winter/alike-section.ts';
import { familySection } from '../../../studies/winter/family-section.ts';
import { ideasSection } from '../../../studies/winter/ideas-section.ts';
import { overSeeds, ratioOverSeeds } from '../../../studies/winter/over-seeds.ts';
import type { AthletesWinter, Outcome } from '../../../studies/winter/winter.ts';

describe('an interval over seeds', () => {
  it('is that of Student’s t: 1, 2, 3 with two degrees of freedom', () => {
    const { mean, low, high } = overSeeds([1, 2, 3]);
    expect(mean).toBe(2);
    // 4.303 (NIST e-Handbook 1.3.6.7.2) times 1/√3.
    expect(high - mean).toBeCloseTo(4.303 / Math.sqrt(3), 3);
    expect(mean - low).toBeCloseTo(high - mean, 12);
  });

  it('of a ratio holds exactly the ratios that the seeds do not contradict', () => {
    const [a, b] = [[0.8, 0.7, 0.85, 0.75], [0.4, 0.3, 0.5, 0.35]];
    const { mean, low, high } = ratioOverSeeds(a, b);
    expect(mean).toBeCloseTo(3.1 / 1.55, 12);
    expect(low).toBeLessThan(mean);
    expect(high).toBeGreaterThan(mean);
    expect(overSeeds(a.map((value, i) => value - low * b[i]!)).low).toBeCloseTo(0, 9);
    expect(overSeeds(a.map((value, i) => value - high * b[i]!)).high).toBeCloseTo(0, 9);
  });
});

/** Seeds of twenty athletes each, of whom so many are right, and who keep so many of ten useless grips. */
const seasons = (right: { advised: number; naive: number }, kept: { advised: number; naive: number }): AthletesWinter[][] =>
  [0, 1, 0, 1].map((more) => Array.from({ length: 20 }, (_, number) => {
    const outcome = (coach: 'advised' | 'naive'): Outcome => ({
      family: 'split', right: number < right[coach] + more, regret: 0, missAtEnd: 1, gained: 0,
      ideas: Array.from({ length: 10 }, (_unused, idea) => ({ kept: idea < kept[coach] + (number === 0 ? more : 0), settled: true, change: 0 })),
    });
    return { best: 'split', advised: { ...outcome('advised'), chosen: { family: 'split', first: 'try-all', last: 'lead-with', bullpens: 3 } }, naive: outcome('naive') };
  }));

describe('the bounds of the winter', () => {
  it('hold where the advice is right twice as often, and are missed where it is right as often', () => {
    expect(familySection(seasons({ advised: 14, naive: 7 }, { advised: 0, naive: 5 })).missed).toEqual([]);
    expect(familySection(seasons({ advised: 8, naive: 7 }, { advised: 0, naive: 5 })).missed).toHaveLength(1);
    expect(familySection(seasons({ advised: 19, naive: 18 }, { advised: 0, naive: 5 })).missed).toEqual([]);
  });

  it('are missed where useless grips are kept almost as often as by the glance', () => {
    const right = { advised: 14, naive: 7 };
    expect(ideasSection(seasons(right, { advised: 0, naive: 5 })).missed).toEqual([]);
    expect(ideasSection(seasons(right, { advised: 4, naive: 5 })).missed).toHaveLength(2);
  });

  it('of the control are missed by a coach who has seen the lot', () => {
    const alike = (advised: number) => [0, 1, 2, 0].map((more) => Array.from({ length: 20 }, (_, number) => ({ advised: number < advised + more, naive: number < 7 - more, last: 'try-all' as const })));
    expect(alikeSection(alike(6)).missed).toEqual([]);
    expect(alikeSection(alike(14)).missed).toHaveLength(1);
  });
});
