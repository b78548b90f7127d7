import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anytimeShareLowerBound, shareEvidence } from '../../../core/statistics/share-lower-bound.ts';
import { wilsonInterval } from '../../../core/statistics/wilson.ts';
import { seededNormal } from './seeded-normals.ts';

/** A hit with the given chance: half of normal numbers are under 0, and so on. */
const athlete = (seed: number, quantile: number) => {
  const normal = seededNormal(seed);
  return () => normal() < quantile;
};

describe('the lower bound of a share that holds at every look', () => {
  it('is where the evidence reaches 1/α, and under the Wilson interval, which holds for one look only', () => {
    const count = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(count, count, (one, other) => {
        const [hits, throws] = [Math.min(one, other), Math.max(one, other)];
        const bound = anytimeShareLowerBound(hits, throws);
        expect(bound).toBeLessThan(wilsonInterval(hits, throws)!.low);
        expect(Math.abs(shareEvidence(hits, throws, bound) / 20 - 1)).toBeLessThan(1e-9);
      }),
      { seed: 81 },
    );
  });

  it('is 0 without a hit and without a throw, and refuses what is no share', () => {
    expect(anytimeShareLowerBound(0, 0)).toBe(0);
    expect(anytimeShareLowerBound(0, 30)).toBe(0);
    for (const [hits, count] of [[3, 2], [-1, 2], [0.5, 2]] as const) expect(() => anytimeShareLowerBound(hits, count)).toThrow(RangeError);
  });

  it('an athlete who hits half the time passes a gate at one half in at most 5 of 100 careers of 200 throws', () => {
    const hit = athlete(82, 0);
    let passed = 0;
    for (let career = 0; career < 1000; career += 1) {
      let hits = 0;
      let over = false;
      for (let count = 1; count <= 200 && !over; count += 1) {
        hits += hit() ? 1 : 0;
        over = shareEvidence(hits, count, 0.5) >= 20;
      }
      passed += over ? 1 : 0;
    }
    expect(passed).toBeLessThanOrEqual(50);
    expect(passed).toBeGreaterThan(0);
  });

  // Computed independently for the design of the gate: the middle athlete of many.
  it.each([
    [0.7, 0.5244005127080407, 47],
    [0.8, 0.8416212335729143, 19],
  ])('a true share of %f passes a gate at one half after about as many throws as is told', (_share, quantile, expected) => {
    const hit = athlete(83, quantile);
    const needed = Array.from({ length: 601 }, () => {
      let [hits, count] = [0, 0];
      do {
        hits += hit() ? 1 : 0;
        count += 1;
      } while (shareEvidence(hits, count, 0.5) < 20);
      return count;
    });
    const middle = needed.sort((a, b) => a - b)[300]!;
    expect(Math.abs(middle - expected)).toBeLessThanOrEqual(2);
  });
});
