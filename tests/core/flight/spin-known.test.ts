import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aerodynamicConstantPerM, liftCoefficient, spinParameterOf } from '../../../core/flight/aerodynamics.ts';
import { mirrorSpin, mirrorTilt, mirrorVector } from '../../../core/flight/mirror.ts';
import { transverseCoefficients } from '../../../core/flight/movement.ts';
import { completedByPath, knownSpin, transverseSpinOf, type KnownSpin } from '../../../core/flight/spin-known.ts';
import { spinAxisFromGyro, spinAxisFromTilt, tiltFromSpin } from '../../../core/flight/spin.ts';
import { add, cross, norm, scale, type Vector } from '../../../core/flight/vector.ts';

const seeded = { seed: 20260302, numRuns: 1000 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const tilts = between(0, 6.2831);
const rates = between(100, 3500);
const velocities = fc.tuple(between(-6, 6), between(-48, -20), between(-6, 6));
const forward: Vector = [0.8, -37, -0.9];
const rpmOf = (spinRadps: Vector): number => (norm(spinRadps) * 30) / Math.PI;
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
const vectorOf = (known: KnownSpin): Vector => {
  if (known.kind !== 'vector') throw new Error(`only ${known.kind} is known`);
  return known.spinRadps;
};
const gap = (a: Vector, b: Vector): number => norm(add(a, scale(b, -1)));

describe('What a device tells of a spin comes back out of the vector to 1e-12', () => {
  test('tilt and signed gyro angle', () => {
    fc.assert(fc.property(tilts, between(-1.5, 1.5), rates, velocities, (tiltRad, gyroRad, rateRpm, velocityMps) => {
      const spin = vectorOf(knownSpin({ rateRpm, tiltRad, gyroRad, how: 'measured' }, velocityMps));
      const tilt = tiltFromSpin(spin, velocityMps)!;
      expect(apart(tilt.tiltRad!, tiltRad)).toBeLessThan(1e-12);
      expect(Math.abs(tilt.gyroRad - gyroRad)).toBeLessThan(1e-12);
      expect(Math.abs(tilt.efficiency - Math.cos(gyroRad))).toBeLessThan(1e-12);
      expect(Math.abs(rpmOf(spin) / rateRpm - 1)).toBeLessThan(1e-12);
    }), seeded);
  });

  test('tilt and efficiency with the sign of the part along the flight', () => {
    fc.assert(fc.property(tilts, between(0.01, 1), fc.constantFrom(1 as const, -1 as const), rates, velocities, (tiltRad, efficiency, gyroSign, rateRpm, velocityMps) => {
      const tilt = tiltFromSpin(vectorOf(knownSpin({ rateRpm, tiltRad, efficiency, gyroSign, how: 'measured' }, velocityMps)), velocityMps)!;
      expect(apart(tilt.tiltRad!, tiltRad)).toBeLessThan(1e-12);
      expect(Math.abs(tilt.efficiency - efficiency)).toBeLessThan(1e-12);
      if (efficiency < 0.999) expect(Math.sign(tilt.gyroRad)).toBe(gyroSign);
    }), seeded);
  });

  test('a direction of any length and a rate, through tilt and gyro angle and back', () => {
    const part = between(-3, 3);
    fc.assert(fc.property(fc.tuple(part, part, part), rates, velocities, (axis, rateRpm, velocityMps) => {
      fc.pre(norm(axis) > 0.01);
      const spin = vectorOf(knownSpin({ rateRpm, axis, how: 'measured' }, velocityMps));
      expect(Math.abs(rpmOf(spin) / rateRpm - 1)).toBeLessThan(1e-12);
      expect(gap(scale(spin, 1 / norm(spin)), scale(axis, 1 / norm(axis)))).toBeLessThan(1e-12);
      const tilt = tiltFromSpin(spin, velocityMps)!;
      fc.pre(tilt.efficiency > 0.01);
      const again = spinAxisFromGyro({ tiltRad: tilt.tiltRad!, gyroRad: tilt.gyroRad, spinRpm: rateRpm, velocityMps });
      expect(gap(again, spin) / norm(spin)).toBeLessThan(1e-12);
    }), seeded);
  });
});

describe('A device that tells less', () => {
  test('efficiency without a sign says how much spin is across the flight, and no axis is invented for the rest', () => {
    expect(knownSpin({ rateRpm: 1700, tiltRad: 1, efficiency: 0.9, how: 'measured' }, forward)).toEqual({
      kind: 'across', tiltHow: 'measured', efficiencyHow: 'measured', rateRpm: 1700, tiltRad: 1, efficiency: 0.9,
    });
  });

  test('at an efficiency of 1, or above it as noisy devices send, nothing is left along the flight and the axis is whole', () => {
    const whole = spinAxisFromTilt({ tiltRad: 1, efficiency: 1, spinRpm: 1700, velocityMps: forward });
    for (const efficiency of [1, 1.02]) {
      expect(vectorOf(knownSpin({ rateRpm: 1700, tiltRad: 1, efficiency, how: 'measured' }, forward))).toEqual(whole);
    }
  });

  test('tilt alone, efficiency alone and a bare rate stay what they are', () => {
    const how = 'measured' as const;
    expect(knownSpin({ rateRpm: 1700, tiltRad: 1, how }, forward)).toEqual({ kind: 'tilt', how, rateRpm: 1700, tiltRad: 1 });
    expect(knownSpin({ rateRpm: 1700, efficiency: 0.9, how }, forward)).toEqual({ kind: 'efficiency', how, rateRpm: 1700, efficiency: 0.9 });
    expect(knownSpin({ rateRpm: 1700, gyroRad: -0.5, how }, forward)).toEqual({ kind: 'efficiency', how, rateRpm: 1700, efficiency: Math.cos(0.5) });
    expect(knownSpin({ rateRpm: 1700, how }, forward)).toEqual({ kind: 'rate', rateRpm: 1700 });
    expect(knownSpin({ rateRpm: 1700, axis: [0, 0, 0], tiltRad: 1, how }, forward).kind).toBe('tilt');
  });

  test('an axis is believed before the tilt and efficiency beside it', () => {
    const spin = vectorOf(knownSpin({ rateRpm: 1800, axis: [-2, 0, 0], tiltRad: 2, efficiency: 0.5, how: 'inferred' }, forward));
    expect(gap(spin, [-1800 * Math.PI / 30, 0, 0])).toBeLessThan(1e-12);
  });
});

describe('What the path fills in', () => {
  const asked = spinAxisFromTilt({ tiltRad: 1.2, efficiency: 1, spinRpm: 1530, velocityMps: forward });

  test('a bare rate gets tilt and efficiency from the path, both marked inferred', () => {
    const known = completedByPath({ kind: 'rate', rateRpm: 1700 }, asked, forward);
    expect(known).toMatchObject({ kind: 'across', tiltHow: 'inferred', efficiencyHow: 'inferred', rateRpm: 1700 });
    expect(known.kind === 'across' && known.efficiency).toBeCloseTo(0.9, 12);
    expect(known.kind === 'across' && known.tiltRad).toBeCloseTo(1.2, 12);
  });

  test('what was measured stays measured beside what the path fills in', () => {
    expect(completedByPath({ kind: 'tilt', how: 'measured', rateRpm: 1700, tiltRad: 1 }, asked, forward)).toMatchObject({ tiltRad: 1, tiltHow: 'measured', efficiencyHow: 'inferred' });
    expect(completedByPath({ kind: 'efficiency', how: 'measured', rateRpm: 1700, efficiency: 0.8 }, asked, forward)).toMatchObject({ efficiency: 0.8, efficiencyHow: 'measured', tiltHow: 'inferred' });
    const whole: KnownSpin = { kind: 'vector', how: 'measured', rateRpm: 1700, spinRadps: asked };
    expect(completedByPath(whole, scale(asked, 0.5), forward)).toBe(whole);
  });

  test('more push than the whole spin could give counts as an efficiency of 1', () => {
    expect(completedByPath({ kind: 'rate', rateRpm: 1400 }, asked, forward)).toMatchObject({ efficiency: 1 });
  });

  test('a path without a push, or a ball that does not turn, tells nothing', () => {
    expect(completedByPath({ kind: 'rate', rateRpm: 1700 }, null, forward)).toEqual({ kind: 'rate', rateRpm: 1700 });
    expect(completedByPath({ kind: 'rate', rateRpm: 0 }, asked, forward)).toEqual({ kind: 'rate', rateRpm: 0 });
  });

  test('the push of a constant-acceleration path is the Magnus force of the spin that is read from it', () => {
    const path = { positionM: [-0.5, 15.24, 1.8] as Vector, velocityMps: [1.5, -36, -1.5] as Vector, accelerationMps2: [-3, 7, -5] as Vector };
    const air = transverseCoefficients(path, 16.7, 1.2)!;
    const spin = transverseSpinOf(air)!;
    const push = cross(spin, air.meanVelocityMps);
    const speed = norm(air.meanVelocityMps);
    const size = aerodynamicConstantPerM(1.2) * liftCoefficient(spinParameterOf(spin, air.meanVelocityMps)) * speed * speed;
    expect(gap(scale(push, size / norm(push)), air.magnusMps2)).toBeLessThan(1e-12);
    expect(norm(spin)).toBeCloseTo(air.transverseSpinRadps!, 9);
    expect(transverseSpinOf({ ...air, magnusMps2: [0, 0, 0], liftCoefficient: 0 })).toBeNull();
    expect(transverseSpinOf({ ...air, liftCoefficient: 0.5 })).toBeNull();
  });
});

test('mirrored once, axially, a left-hander’s spin has the mirrored tilt and the opposite gyro angle (exact)', () => {
  fc.assert(fc.property(tilts, between(-1.5, 1.5), rates, velocities, (tiltRad, gyroRad, rateRpm, velocityMps) => {
    const spin = vectorOf(knownSpin({ rateRpm, tiltRad, gyroRad, how: 'measured' }, velocityMps));
    const other = vectorOf(knownSpin({ rateRpm, tiltRad: mirrorTilt(tiltRad), gyroRad: -gyroRad, how: 'measured' }, mirrorVector(velocityMps)));
    expect(gap(mirrorSpin(spin), other) / norm(spin)).toBeLessThan(1e-12);
    expect(mirrorSpin(mirrorSpin(spin))).toEqual(spin.map((value) => value + 0));
  }), seeded);
});
