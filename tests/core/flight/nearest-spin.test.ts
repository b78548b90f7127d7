import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { separationBySpin, type Arm, type Separation } from '../../../core/flight/arm.ts';
import { nearestSpin } from '../../../core/flight/nearest-spin.ts';
import { sensitivities } from '../../../core/flight/sensitivities.ts';
import { reachRegion } from '../../../core/flight/reach.ts';
import { anyAimedArm, anyArm, anyShare, knownArm, thrownBy } from './arms.ts';
import { inchM } from './feet-and-miles.ts';

const anyPlace = fc.record({ verticalM: fc.double({ min: -1, max: 0.4, noNaN: true }), armSideM: fc.double({ min: -0.6, max: 0.6, noNaN: true }) });
const apart = (one: Separation, other: Separation): number => Math.hypot(one.verticalM - other.verticalM, one.armSideM - other.armSideM);
const within = (value: number, { low, high }: { readonly low: number; readonly high: number }): boolean => value >= low - 1e-9 && value <= high + 1e-9;

describe('The spin that comes nearest to a place', () => {
  test('stays within the arm, and flown again it gives what was told; with what is left over it is the place', () => {
    fc.assert(
      fc.property(fc.oneof(anyArm, anyAimedArm), anyPlace, (arm, place) => {
        const { thrown, separation, leftOver } = nearestSpin(arm, place)!;
        expect([within(thrown.spinRpm, arm.spinRpm), within(thrown.speedMps, arm.speedMps), within(thrown.efficiency, arm.efficiency)]).toEqual([true, true, true]);
        expect(thrown.tiltRad).toBeGreaterThanOrEqual(0);
        expect(thrown.tiltRad).toBeLessThanOrEqual(2 * Math.PI);
        expect(apart(separationBySpin(arm, thrown)!, separation)).toBeLessThan(1e-12);
        expect(separation.verticalM + leftOver.verticalM).toBeCloseTo(place.verticalM, 12);
        expect(separation.armSideM + leftOver.armSideM).toBeCloseTo(place.armSideM, 12);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  test('of a place that the arm has thrown leaves nothing over', () => {
    fc.assert(
      fc.property(fc.oneof(anyArm, anyAimedArm), anyShare, (arm, share) => {
        const place = separationBySpin(arm, thrownBy(arm, share))!;
        const { leftOver } = nearestSpin(arm, place)!;
        // Where only one gyro sign at one speed reaches the very edge, the scale of effort may stop just short of it.
        expect(Math.hypot(leftOver.verticalM, leftOver.armSideM)).toBeLessThan(0.003);
      }),
      { seed: 32, numRuns: 300 },
    );
  });

  test('is not beaten by any throw of the arm by more than 3 mm', () => {
    fc.assert(
      fc.property(fc.oneof(anyArm, anyAimedArm), anyPlace, fc.array(anyShare, { minLength: 60, maxLength: 60 }), (arm, place, shares) => {
        const { separation } = nearestSpin(arm, place)!;
        const best = Math.min(...shares.map((share) => apart(separationBySpin(arm, thrownBy(arm, share))!, place)), ...cornersOf(arm).map((point) => apart(point, place)));
        expect(apart(separation, place)).toBeLessThan(best + 0.003);
      }),
      { seed: 33, numRuns: 100 },
    );
  });

  test('uses efficiency before it uses spin, and spin before speed', () => {
    const arm = knownArm();
    const [near, far, farthest] = [-10, -4, 30].map((verticalIn) => nearestSpin(arm, { verticalM: verticalIn * inchM, armSideM: 6 * inchM })!.thrown);
    expect(near).toMatchObject({ spinRpm: 1700 });
    expect(near!.efficiency).toBeLessThan(1);
    expect(far!.efficiency).toBe(1);
    expect(far!.spinRpm).toBeGreaterThan(1700);
    expect(farthest).toMatchObject({ efficiency: 1, spinRpm: 2000, speedMps: arm.speedMps.low });
  });

  test('is not there when the ball does not get to the plate', () => {
    expect(nearestSpin({ ...knownArm(), direction: [0, 1, 0] }, { verticalM: -0.2, armSideM: 0.1 })).toBeNull();
  });
});

function cornersOf(arm: Arm): readonly Separation[] {
  const { outline, hole } = reachRegion(arm)!;
  return [...outline, ...(hole ?? [])];
}

describe('What a step does to a throw of an arm', () => {
  const arm = knownArm();
  const thrown = nearestSpin(arm, { verticalM: -10 * inchM, armSideM: 6 * inchM })!.thrown;
  const steps = sensitivities(arm, thrown)!;

  test('adds up: from half a step short of the throw in everything to half a step beyond, it moves by the sum, to a twentieth of an inch', () => {
    const stepped = (by: number) => ({
      ...thrown, tiltRad: thrown.tiltRad + (by * 10 * Math.PI) / 180, spinRpm: thrown.spinRpm + by * 100, speedMps: thrown.speedMps + by * 0.44704, efficiency: thrown.efficiency + by * 0.05,
    });
    const before = separationBySpin(arm, stepped(-0.5))!;
    const after = separationBySpin(arm, stepped(0.5))!;
    const sum = (of: (step: Separation) => number): number => Object.values(steps).reduce((total, step: Separation) => total + of(step), 0);
    expect(Math.abs(after.verticalM - before.verticalM - sum(({ verticalM }) => verticalM))).toBeLessThan(0.05 * inchM);
    expect(Math.abs(after.armSideM - before.armSideM - sum(({ armSideM }) => armSideM))).toBeLessThan(0.05 * inchM);
  });

  test('is about the movement times ten degrees for the axis, and across it', () => {
    const moved = { verticalM: -10 * inchM + arm.fastball.verticalM, armSideM: 6 * inchM + arm.fastball.armSideM };
    const { verticalM, armSideM } = steps.perTenDegrees;
    expect(Math.hypot(verticalM, armSideM)).toBeCloseTo(Math.hypot(moved.verticalM, moved.armSideM) * (Math.PI / 18), 1);
    expect(verticalM).toBeLessThan(0);
    expect(armSideM).toBeGreaterThan(0);
  });

  test('of spin and efficiency makes more movement; at full efficiency the step ends there', () => {
    expect(steps.perHundredRpm.armSideM).toBeGreaterThan(0.2 * inchM);
    expect(steps.perFivePoints.armSideM).toBeGreaterThan(0.2 * inchM);
    expect(steps.perMph.armSideM).toBeLessThan(0);
    const full = sensitivities(arm, { ...thrown, efficiency: 1 })!.perFivePoints;
    const toEnd = separationBySpin(arm, { ...thrown, efficiency: 1 })!.armSideM - separationBySpin(arm, { ...thrown, efficiency: 0.95 })!.armSideM;
    expect(full.armSideM).toBeCloseTo(toEnd, 12);
  });

  test('is not told of a ball that does not get to the plate', () => {
    expect(sensitivities({ ...arm, direction: [0, 1, 0] }, thrown)).toBeNull();
  });
});
