import { expect, test } from 'vitest';
import { flightTimeFromSpeedS } from '../../../core/flight/arrival.ts';
import { movementFromSpin } from '../../../core/flight/spin-flight.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { spinAxisFromTilt, tiltFromClock } from '../../../core/flight/spin.ts';
import { norm } from '../../../core/flight/vector.ts';
import { inchM, mphMps } from './feet-and-miles.ts';
import { changeup, launchOf } from './pitches.ts';

const turnover = { releaseSpeedMps: 85 * mphMps, spinRpm: 1700, tiltRad: tiltFromClock({ hours: 2, minutes: 0 }), efficiency: 0.95, distanceM: 16.3322, airDensityKgM3: 1.2 };

test.each([
  ['straight at the plate', 0, 0.05],
  ['1.2° to the side', 1.2, 0.8],
])('spin alone gives the break of the pitch flown %s, with the time within 0.5 ms and the plate speed within 0.3 mph', (direction, azimuthDeg, acrossIn) => {
  const launch = launchOf({ ...changeup, azimuthDeg });
  const spinRadps = spinAxisFromTilt({ ...turnover, velocityMps: launch.velocityMps });
  const flown = flyPitch({ ...launch, spinRadps }, { airDensityKgM3: 1.2 });
  const truth = inducedBreakBetween(flown.start, flown.end);
  const fromSpin = movementFromSpin(turnover)!;
  const upIn = (fromSpin.verticalM - truth.verticalM) / inchM;
  const rightIn = (fromSpin.horizontalM - truth.horizontalM) / inchM;
  console.log(`from spin alone, ${direction}: break off by ${rightIn.toFixed(3)} in across, ${upIn.toFixed(3)} in up`);
  expect(Math.abs(upIn)).toBeLessThan(0.4);
  expect(Math.abs(rightIn)).toBeLessThan(acrossIn);
  expect(Math.abs(fromSpin.timeS - truth.timeS)).toBeLessThan(0.0005);
  expect(Math.abs(fromSpin.plateSpeedMps - norm(flown.end.velocityMps))).toBeLessThan(0.3 * mphMps);
});

test('a left-hander’s mirrored tilt moves the ball as far to the other side', () => {
  const mirrored = movementFromSpin({ ...turnover, tiltRad: 2 * Math.PI - turnover.tiltRad, gyroSign: -1 })!;
  const right = movementFromSpin({ ...turnover, gyroSign: 1 })!;
  expect(right.horizontalM).toBeLessThan(-0.2);
  expect(mirrored.horizontalM).toBeCloseTo(-right.horizontalM, 12);
  expect(mirrored.verticalM).toBeCloseTo(right.verticalM, 12);
});

test('a ball too slow to get there has no movement', () => {
  expect(movementFromSpin({ ...turnover, releaseSpeedMps: 0.5 })).toBeNull();
});

test('a throw of catch play over 36 m is arced to get there', () => {
  const far = movementFromSpin({ ...turnover, releaseSpeedMps: 30, distanceM: 36 })!;
  expect(far.timeS).toBeGreaterThan(1.2);
  expect(far.timeS).toBeLessThan(1.6);
});

test('speed alone gives the flight time of the flown pitch within 1 ms', () => {
  const errorMs = 1000 * (flightTimeFromSpeedS(turnover.releaseSpeedMps, turnover.distanceM, 1.2) - movementFromSpin(turnover)!.timeS);
  console.log(`from speed alone: flight time off by ${errorMs.toFixed(2)} ms`);
  expect(Math.abs(errorMs)).toBeLessThan(1);
});
