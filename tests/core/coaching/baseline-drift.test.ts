import { describe, expect, it } from 'vitest';
import { baselineDrift, NO_DRIFT, withFastballSince } from '../../../core/coaching/baseline-drift.ts';
import { baselinesOf, NO_FASTBALLS, withFastball, type FastballBaseline, type FastballReading } from '../../../core/coaching/baseline.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { seededNormal } from '../statistics/seeded-normals.ts';

type Thrown = readonly [mph: number, heightIn: number, sideIn: number];
const fastball = ([mph, heightIn, sideIn]: Thrown, index: number): FastballReading => ({
  place: index + 1, atMs: index, speedMps: mphToMps(mph), verticalM: 0.4, armSideM: 0.2, flightTimeS: 'not-sent',
  releaseHeightM: inchesToM(heightIn), releaseArmSideM: inchesToM(sideIn), path: 'not-sent',
});
const baselines = (fastballs: readonly FastballReading[], renewals: readonly number[] = []): FastballBaseline[] =>
  baselinesOf('mound', fastballs.reduce((before, one) => withFastball(before, one, renewals), NO_FASTBALLS), renewals, 0);
const since = (baseline: FastballBaseline, fastballs: readonly FastballReading[]) =>
  baselineDrift(baseline, fastballs.reduce((run, one) => withFastballSince(run, baseline, one), NO_DRIFT));
const driftOf = (thrown: readonly Thrown[]) => {
  const fastballs = thrown.map(fastball);
  return since(baselines(fastballs)[0]!, fastballs);
};
const five: readonly Thrown[] = [[90, 70, 20], [90.5, 70.5, 20.5], [89.5, 69.5, 19.5], [90, 70, 20], [90, 70, 20]];
const more = (count: number, thrown: Thrown): readonly Thrown[] => [...five, ...Array.from({ length: count }, () => thrown)];

describe('a fastball that leaves its baseline', () => {
  it('by sinking speed is told with how much, smoothed', () => {
    const drift = driftOf(more(12, [87, 70, 20]))!;
    expect(drift).toMatchObject({ fastballs: 12, releaseHeightM: null, releaseArmSideM: null });
    // From 90 towards 87: 3·(1 − 0.7¹²) of it.
    expect(drift.speedMps).toBeCloseTo(mphToMps(-3 * (1 - 0.7 ** 12)), 9);
  });

  it('by a release elsewhere is told for that axis alone, whichever way', () => {
    expect(driftOf(more(12, [90, 66, 20]))).toMatchObject({ speedMps: null, releaseArmSideM: null, releaseHeightM: expect.closeTo(inchesToM(-4 * (1 - 0.7 ** 12)), 9) });
    expect(driftOf(more(12, [90, 70, 24]))).toMatchObject({ releaseHeightM: null, releaseArmSideM: expect.closeTo(inchesToM(4 * (1 - 0.7 ** 12)), 9) });
  });

  it('is not told before five have come since, of one slip, of speed that rises, nor of 1 mph', () => {
    expect(driftOf(more(4, [80, 60, 20]))).toBeNull();
    expect(driftOf([...more(6, [90, 70, 20]), [80, 70, 20]])).toBeNull();
    expect(driftOf(more(12, [93, 70, 20]))).toBeNull();
    expect(driftOf(more(20, [89, 70, 20]))).toBeNull();
  });

  it('holds again once a new baseline stands', () => {
    const fastballs = more(12, [87, 70, 20]).map(fastball);
    const [, renewed] = baselines(fastballs, [18]);
    expect(since(renewed!, fastballs)).toBeNull();
  });

  it('cannot be seen in a release that the device does not tell', () => {
    const fastballs = more(12, [90, 60, 20]).map((thrown, index) => ({ ...fastball(thrown, index), releaseHeightM: 'not-sent' as const }));
    expect(since(baselines(fastballs)[0]!, fastballs)).toBeNull();
  });

  /** Forty fastballs with 0.9 mph and 1 in of scatter, looked at after every one. */
  const offered = (lossMph: number, seed: number): boolean => {
    const normal = seededNormal(seed);
    const thrown = Array.from({ length: 40 }, (_, n): Thrown => [90 + 0.9 * normal() - lossMph * Math.min(1, Math.max(0, n - 5) / 10), 70 + normal(), 20 + normal()]);
    return thrown.some((_, n) => n >= 5 && driftOf(thrown.slice(0, n + 1)) !== null);
  };
  const share = (lossMph: number): number => Array.from({ length: 300 }, (_, seed) => offered(lossMph, seed + 1)).filter(Boolean).length / 300;

  it('is offered anew in under 3 % of bullpens that do not drift, and in over 85 % of those that lose 2 mph', () => {
    expect(share(0)).toBeLessThan(0.03);
    expect(share(2)).toBeGreaterThan(0.85);
  });
});
