import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mirrorPath, mirrorSpin, mirrorTilt, mirrorVector } from '../../../core/flight/mirror.ts';
import { spinAxisFromTilt, tiltFromClock, tiltFromForce, tiltFromSpin, tiltToClock } from '../../../core/flight/spin.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import type { Vector } from '../../../core/flight/vector.ts';

const seeded = { seed: 20260301, numRuns: 500 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const tilts = between(0, 6.2831);
const efficiencies = between(0.01, 1);
const signs = fc.constantFrom(1 as const, -1 as const);
const velocities = fc.tuple(between(-6, 6), between(-48, -20), between(-6, 6));

/** Distance between two angles the short way round. */
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
const expectClose = (a: Vector, b: Vector): void => a.forEach((value, i) => expect(value).toBeCloseTo(b[i]!, 9));

describe('Tilt, efficiency and axis', () => {
  test('go to a spin vector and back unchanged, for any direction of flight', () => {
    fc.assert(
      fc.property(tilts, efficiencies, between(100, 3500), signs, velocities, (tiltRad, efficiency, spinRpm, gyroSign, velocityMps) => {
        const spin = spinAxisFromTilt({ tiltRad, efficiency, spinRpm, gyroSign, velocityMps });
        const tilt = tiltFromSpin(spin, velocityMps)!;
        expect(apart(tilt.tiltRad!, tiltRad)).toBeLessThan(1e-9);
        expect(tilt.efficiency).toBeCloseTo(efficiency, 10);
        expect(tilt.transverseRpm).toBeCloseTo(spinRpm * efficiency, 7);
        expect(Math.abs(tilt.gyroRad - gyroSign * Math.acos(efficiency))).toBeLessThan(1e-6);
      }),
      seeded,
    );
  });

  test('come out of any spin vector and rebuild it', () => {
    const part = between(-250, 250);
    fc.assert(
      fc.property(fc.tuple(part, part, part), velocities, (spin, velocityMps) => {
        const tilt = tiltFromSpin(spin, velocityMps);
        fc.pre(tilt !== null && tilt.tiltRad !== null);
        const spinRpm = (Math.hypot(...spin) * 30) / Math.PI;
        const again = spinAxisFromTilt({ tiltRad: tilt!.tiltRad!, efficiency: tilt!.efficiency, spinRpm, gyroSign: tilt!.gyroRad < 0 ? -1 : 1, velocityMps });
        again.forEach((value, i) => expect(Math.abs(value - spin[i]!)).toBeLessThan(1e-5));
      }),
      seeded,
    );
  });

  test('have no tilt where nothing spins across the flight, and nothing at all without spin', () => {
    expect(tiltFromSpin([0, 0, 0])).toBeNull();
    expect(tiltFromSpin([0, -200, 0])).toMatchObject({ tiltRad: null, efficiency: 0, transverseRpm: 0, gyroRad: Math.PI / 2 });
    expect(tiltFromForce(0, 0)).toBeNull();
  });

  test('an efficiency above 1, as noisy devices send it, counts as 1', () => {
    expectClose(spinAxisFromTilt({ tiltRad: 2, efficiency: 1.02, spinRpm: 2000 }), spinAxisFromTilt({ tiltRad: 2, efficiency: 1, spinRpm: 2000 }));
  });

  test('a push and the axis behind it have the same tilt', () => {
    fc.assert(
      fc.property(tilts, (tiltRad) => {
        expect(apart(tiltFromForce(-Math.sin(tiltRad), Math.cos(tiltRad))!, tiltRad)).toBeLessThan(1e-12);
      }),
      seeded,
    );
  });
});

describe('The clock', () => {
  test('shows every minute of the twelve hours and reads it back', () => {
    for (let minute = 0; minute < 720; minute += 1) {
      const clock = { hours: Math.floor(minute / 60) || 12, minutes: minute % 60 };
      expect(tiltToClock(tiltFromClock(clock))).toEqual(clock);
    }
  });

  test('rounds to the minute across the hour and across twelve', () => {
    const minuteRad = (2 * Math.PI) / 720;
    expect(tiltToClock(59.6 * minuteRad)).toEqual({ hours: 1, minutes: 0 });
    expect(tiltToClock(719.6 * minuteRad)).toEqual({ hours: 12, minutes: 0 });
    expect(tiltToClock(-30 * minuteRad)).toEqual({ hours: 11, minutes: 30 });
  });
});

describe('The mirror for left-handers', () => {
  test('turns 1:30 into 10:30 and leaves 12:00 and 6:00', () => {
    const mirrored = (hours: number, minutes: number) => tiltToClock(mirrorTilt(tiltFromClock({ hours, minutes })));
    expect(mirrored(1, 30)).toEqual({ hours: 10, minutes: 30 });
    expect(mirrored(12, 0)).toEqual({ hours: 12, minutes: 0 });
    expect(mirrored(6, 0)).toEqual({ hours: 6, minutes: 0 });
  });

  test('used twice changes nothing', () => {
    const vectors = fc.tuple(between(-50, 50), between(-50, 50), between(-50, 50));
    fc.assert(
      fc.property(vectors, tilts, (vector, tiltRad) => {
        expectClose(mirrorVector(mirrorVector(vector)), vector);
        expectClose(mirrorSpin(mirrorSpin(vector)), vector);
        expect(apart(mirrorTilt(mirrorTilt(tiltRad)), tiltRad)).toBeLessThan(1e-12);
      }),
      seeded,
    );
  });

  test('a left-hander’s changeup flies the mirror image of a right-hander’s', () => {
    const launch = { positionM: [-0.6, 16.7, 1.8] as const, velocityMps: [1, -38, -0.5] as const, spinRadps: spinAxisFromTilt({ tiltRad: 1.2, efficiency: 0.9, spinRpm: 1700 }) };
    const left = { positionM: mirrorVector(launch.positionM), velocityMps: mirrorVector(launch.velocityMps), spinRadps: mirrorSpin(launch.spinRadps) };
    const [right, mirrored] = [flyPitch(launch, { airDensityKgM3: 1.2 }).end, flyPitch(left, { airDensityKgM3: 1.2 }).end];
    expectClose(mirrored.positionM, mirrorVector(right.positionM));
    expectClose(mirrored.velocityMps, mirrorVector(right.velocityMps));
    const path = { positionM: right.positionM, velocityMps: right.velocityMps, accelerationMps2: [-3, 8, -9] as const };
    expect(mirrorPath(path)).toEqual({ positionM: mirrorVector(path.positionM), velocityMps: mirrorVector(path.velocityMps), accelerationMps2: [3, 8, -9] });
  });
});
