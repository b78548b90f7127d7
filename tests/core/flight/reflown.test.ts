import { describe, expect, test } from 'vitest';
import type { FittedPath } from '../../../core/flight/fitted-path.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { fitPath } from '../../../core/flight/path-fit.ts';
import { reflownOver } from '../../../core/flight/reflown.ts';
import { movementFromSpin } from '../../../core/flight/spin-flight.ts';
import { degreeRad, footM, inchM, mphMps } from './feet-and-miles.ts';
import { changeup, launchOf } from './pitches.ts';
import { samplesOf } from './seen.ts';

const air = { airDensityKgM3: 1.2 };
const launch = launchOf({ ...changeup, efficiency: 1 });
const thrown = flyPitch(launch, air);
const fit = fitPath(samplesOf(thrown), { ...air, fromYM: launch.positionM[1] }) as FittedPath;
const distanceM = launch.positionM[1] - 0.4318;
const youthM = distanceM - 14.5 * footM;

describe('A throw flown once more', () => {
  test('over its own distance is the flight that was seen, to a tenth of a millimetre from a fitted path and an inch from a constant acceleration', () => {
    const fitted = reflownOver(distanceM, { kind: 'fitted', fit })!;
    const constant = reflownOver(distanceM, { kind: 'constant', path: fit.path, releaseYM: launch.positionM[1], ...air })!;
    fitted.end.positionM.forEach((value, i) => expect(Math.abs(value - thrown.end.positionM[i]!)).toBeLessThan(1e-4));
    constant.end.positionM.forEach((value, i) => expect(Math.abs(value - thrown.end.positionM[i]!)).toBeLessThan(inchM));
  });

  test('over a youth mound is the flight of the same hand from there: sooner, and higher at the plate', () => {
    const truth = flyPitch({ ...launch, positionM: [launch.positionM[0], youthM + 0.4318, launch.positionM[2]] }, air);
    const near = reflownOver(youthM, { kind: 'fitted', fit })!;
    expect(near.end.timeS).toBeCloseTo(truth.end.timeS, 6);
    expect(near.end.positionM[2]).toBeCloseTo(truth.end.positionM[2], 4);
    expect(near.end.positionM[2]).toBeGreaterThan(thrown.end.positionM[2]);
  });

  test('from spin alone is the flight behind its movement', () => {
    const spinThrow = { releaseSpeedMps: 85 * mphMps, spinRpm: 1700, tiltRad: 60 * degreeRad, efficiency: 0.95, distanceM, ...air };
    expect(reflownOver(youthM, { kind: 'spin', spinThrow })!.end.timeS).toBe(movementFromSpin({ ...spinThrow, distanceM: youthM })!.timeS);
  });

  test('that does not get there, or has a push no spin gives, is not drawn', () => {
    const strange = { ...fit.midFlight, accelerationMps2: [0, 8, 6] as const };
    expect(reflownOver(distanceM, { kind: 'constant', path: strange, releaseYM: launch.positionM[1], ...air })).toBeNull();
    expect(reflownOver(500, { kind: 'fitted', fit })).toBeNull();
  });
});
