import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardGravityMps2 } from '../../../core/flight/ball.ts';
import { flyPitch, type FlightConditions, type Launch } from '../../../core/flight/fly.ts';
import { mirrorSpin, mirrorVector } from '../../../core/flight/mirror.ts';
import { fitPath } from '../../../core/flight/path-fit.ts';
import type { PathSample } from '../../../core/flight/path-samples.ts';
import { dot, type Vector } from '../../../core/flight/vector.ts';
import { seeded } from './noise.ts';

const runs = { seed: 20260411, numRuns: 400 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** From a lob of catch play to the fastest pitch, any spin, any air a mound has, any seam effect that was ever claimed. */
const launches = fc.record({
  positionM: fc.tuple(between(-3, 3), between(10, 40), between(0.2, 3)),
  velocityMps: fc.tuple(between(-5, 5), between(-50, -15), between(-8, 12)),
  spinRadps: fc.tuple(between(-350, 350), between(-350, 350), between(-350, 350)),
}) as fc.Arbitrary<Launch>;
const conditions = fc.record({
  airDensityKgM3: between(0.8, 1.4),
  seamCoefficient: fc.record({ x: between(-0.08, 0.08), z: between(-0.08, 0.08) }),
}) as fc.Arbitrary<FlightConditions>;

const finite = (value: unknown): boolean => {
  if (typeof value === 'number') return Number.isFinite(value);
  if (value === null || typeof value !== 'object') return true;
  return Object.values(value).every(finite);
};

describe('Over the whole range of throws a flight', () => {
  test('is never NaN, and ends on the plane or says that it did not', () => {
    fc.assert(fc.property(launches, conditions, (launch, forces) => {
      const flight = flyPitch(launch, { ...forces, longestS: 4 });
      expect(finite(flight.nodes)).toBe(true);
      expect(flight.ending === 'plane' ? Math.abs(flight.end.positionM[1] - 0.4318) : 0).toBeLessThan(1e-11);
    }), runs);
  });

  test('never gains energy in still air', () => {
    fc.assert(fc.property(launches, conditions, (launch, forces) => {
      const energies = flyPitch(launch, { ...forces, longestS: 4 }).nodes.map(({ positionM, velocityMps }) => dot(velocityMps, velocityMps) / 2 + standardGravityMps2 * positionM[2]);
      energies.slice(1).forEach((energy, i) => expect(energy).toBeLessThan(energies[i]!));
    }), runs);
  });

  test('in the mirror is the mirrored flight to the last bit, wind and seams too', () => {
    fc.assert(fc.property(launches, conditions, fc.tuple(between(-8, 8), between(-8, 8), between(-2, 2)), (launch, forces, windMps) => {
      const { seamCoefficient, ...rest } = forces;
      const right = flyPitch(launch, { ...forces, windMps, longestS: 4 });
      const left = flyPitch(
        { positionM: mirrorVector(launch.positionM), velocityMps: mirrorVector(launch.velocityMps), spinRadps: mirrorSpin(launch.spinRadps) },
        { ...rest, windMps: mirrorVector(windMps), seamCoefficient: { x: -seamCoefficient!.x, z: seamCoefficient!.z }, longestS: 4 },
      );
      expect(left.end.timeS).toBe(right.end.timeS);
      [left.end.positionM, left.end.velocityMps].forEach((vector, i) => {
        const other = [right.end.positionM, right.end.velocityMps][i]!;
        expect(vector[0] + other[0]).toBe(0);
        expect(vector.slice(1)).toEqual(other.slice(1));
      });
    }), runs);
  });
});

const anySample: fc.Arbitrary<PathSample> = fc.record({ timeS: between(-2, 5), positionM: fc.tuple(between(-20, 20), between(-20, 60), between(-20, 20)) as fc.Arbitrary<Vector> });

describe('Over the whole range of samples a fit', () => {
  test('of a throw, with any noise, gives release and plate within their errors or a problem that says why, never a number that is none', () => {
    let paths = 0;
    fc.assert(fc.property(launches, conditions, between(0, 0.02), fc.integer({ min: 8, max: 120 }), fc.nat(), (launch, forces, noiseM, count, seed) => {
      const flight = flyPitch(launch, { ...forces, longestS: 4 });
      const { normal } = seeded(seed);
      const noise = (): number => noiseM * normal();
      const samples = Array.from({ length: count }, (_, i): PathSample => {
        const timeS = (flight.end.timeS * i) / (count - 1);
        const [x, y, z] = flight.positionAt(timeS);
        return { timeS, positionM: [x + noise(), y + noise(), z + noise()] };
      });
      const seen = { airDensityKgM3: forces.airDensityKgM3, fromYM: launch.positionM[1] };
      expect(finite(fitPath(samples, seen))).toBe(true);
      const fit = fitPath(samples, { ...seen, measuredSpinRadps: launch.spinRadps });
      expect(finite(fit)).toBe(true);
      if (fit.kind === 'problem') { expect(fit.sentence).toMatch(/^[A-Z0-9].*\.$/); return; }
      paths += 1;
      expect(Math.abs(fit.release.positionM[2] - launch.positionM[2])).toBeLessThan(Math.max(2e-4, 8 * fit.errors.releaseM[2]));
      expect(Math.abs(fit.arrival.positionM[2] - flight.end.positionM[2])).toBeLessThan(Math.max(2e-4, 8 * fit.errors.arrivalM[2]));
    }), runs);
    console.log(`${paths} of ${runs.numRuns} throws were fitted, the others refused`);
    expect(paths).toBeGreaterThan(runs.numRuns / 2);
  });

  test('of anything at all gives a problem that says why', () => {
    let paths = 0;
    fc.assert(fc.property(fc.array(anySample, { maxLength: 80 }), (samples) => {
      const fit = fitPath(samples);
      expect(finite(fit)).toBe(true);
      if (fit.kind === 'problem') expect(fit.sentence).toMatch(/^[A-Z0-9].*\.$/);
      else paths += 1;
    }), runs);
    expect(paths).toBe(0);
  });
});
