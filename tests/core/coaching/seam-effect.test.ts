import { describe, expect, test } from 'vitest';
import { seamBoundM, seamEffect, type SeamEffect } from '../../../core/coaching/seam-effect.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';
import { anytimeRadius } from '../../../core/statistics/anytime-t.ts';
import { degreeRad, inchM } from '../flight/feet-and-miles.ts';
import { acrossOfTrial } from './seam-throws.ts';

const inches = (...values: number[]): number[] => values.map((value) => value * inchM);
const twoInches = 2 * inchM;
const weighed = (effect: SeamEffect): Exclude<SeamEffect, { kind: 'too-few' }> => {
  if (effect.kind === 'too-few') throw new Error('too few throws');
  return effect;
};
const scattered = (middleIn: number, count: number): number[] => inches(...Array.from({ length: count }, (_, i) => middleIn + [-0.8, 0.3, 0.9, -0.4, 0][i % 5]!));

describe('The verdict on a seam effect', () => {
  test('is too few under five throws, and for throws without any scatter', () => {
    expect(seamEffect(tallyOf([]), twoInches)).toEqual({ kind: 'too-few', count: 0, boundM: twoInches });
    expect(seamEffect(tallyOf(inches(6, 7, 6, 7)), twoInches)).toEqual({ kind: 'too-few', count: 4, boundM: twoInches });
    expect(seamEffect(tallyOf(inches(6, 6, 6, 6, 6, 6)), twoInches).kind).toBe('too-few');
  });

  test('is seen when the whole interval lies beyond the bound, to the arm side or to the glove side', () => {
    expect(weighed(seamEffect(tallyOf(scattered(6, 10)), twoInches))).toMatchObject({ kind: 'seen', count: 10 });
    expect(weighed(seamEffect(tallyOf(scattered(-6, 10)), twoInches)).kind).toBe('seen');
    expect(weighed(seamEffect(tallyOf(scattered(-6, 10)), twoInches)).meanM).toBeLessThan(-5 * inchM);
  });

  test('is not seen when the whole interval lies within the bound', () => {
    expect(weighed(seamEffect(tallyOf(scattered(0.2, 25)), twoInches)).kind).toBe('not-seen');
  });

  test('cannot be told when the interval holds the bound, however many throws say that the mean is not zero', () => {
    const effect = weighed(seamEffect(tallyOf(scattered(2.05, 200)), twoInches));
    expect(effect.kind).toBe('cannot-tell');
    expect(effect.intervalM[0]).toBeGreaterThan(1.5 * inchM);
  });

  test('has the interval of one sample that holds at every look: mean ± s·radius with n_e = n and ν = n − 1 at 0.05', () => {
    const throws = inches(1, 2, 3, 4, 5, 6);
    const { intervalM, meanM } = weighed(seamEffect(tallyOf(throws), twoInches));
    const s = Math.sqrt(3.5) * inchM;
    const radius = s * anytimeRadius({ effectiveN: 6, freedom: 5, alpha: 0.05 });
    expect(meanM).toBeCloseTo(3.5 * inchM, 12);
    expect(intervalM[1]).toBeCloseTo(3.5 * inchM + radius, 12);
    expect(intervalM[0]).toBeCloseTo(3.5 * inchM - radius, 12);
  });

  test('for a left-hander, mirrored, is the same with the other sign', () => {
    const right = weighed(seamEffect(tallyOf(scattered(4, 12)), twoInches));
    const left = weighed(seamEffect(tallyOf(scattered(4, 12).map((value) => -value)), twoInches));
    expect(left).toEqual({ ...right, meanM: -right.meanM, intervalM: [-right.intervalM[1], -right.intervalM[0]] });
  });
});

describe('The bound', () => {
  test('is two inches, what the axis may be beside the truth over the movement, and an inch of wind outdoors', () => {
    const movementM = 18 * inchM;
    expect(seamBoundM({ axisBiasRad: 0, movementM, wind: 'indoors' })).toBeCloseTo(twoInches, 12);
    expect(seamBoundM({ axisBiasRad: 3 * degreeRad, movementM, wind: 'indoors' }) / inchM).toBeCloseTo(2 + 0.9425, 4);
    expect(seamBoundM({ axisBiasRad: 3 * degreeRad, movementM, wind: 'outdoors' }) / inchM).toBeCloseTo(3 + 0.9425, 4);
    expect(seamBoundM({ ownM: inchM, axisBiasRad: 0, movementM, wind: { shiftM: 0.5 * inchM } })).toBeCloseTo(1.5 * inchM, 12);
  });
});

describe('Flown changeups, sampled and fitted (a sample; the whole is in seam-effect.prove.ts)', () => {
  const outdoors = seamBoundM({ axisBiasRad: 3 * degreeRad, movementM: 18 * inchM, wind: 'outdoors' });
  const firstSeen = (across: readonly number[], boundM: number): number => across.findIndex((_, i) => seamEffect(tallyOf(across.slice(0, i + 1)), boundM).kind === 'seen');

  test('without a seam effect, with 3° of axis bias and 1 m/s of wind to the same side, are never called one', () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      expect(firstSeen(acrossOfTrial(seed, 60, { seam: 0, axisBiasRad: 3 * degreeRad, windMps: -1 }), outdoors)).toBe(-1);
    }
  });

  test('with a push of 0.08 are called one outdoors within 15 throws, and of 0.05 indoors', () => {
    for (let seed = 1; seed <= 3; seed += 1) {
      for (const [seam, boundM] of [[0.08, outdoors], [0.05, twoInches]] as const) {
        const at = firstSeen(acrossOfTrial(seed, 15, { seam, axisBiasRad: 0, windMps: 0 }), boundM);
        expect(at).toBeGreaterThanOrEqual(4);
      }
    }
  });
});
