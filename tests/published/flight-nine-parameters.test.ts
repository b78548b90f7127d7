import { describe, expect, test } from 'vitest';
import { horizontalApproachRad, verticalApproachRad } from '../../core/flight/approach.ts';
import { ball } from '../../core/flight/ball.ts';
import { stateAtY } from '../../core/flight/constant-acceleration.ts';
import { inducedBreak, transverseCoefficients } from '../../core/flight/movement.ts';
import { norm, scale, type Vector } from '../../core/flight/vector.ts';
import { degreeRad, footM, inchM, mphMps } from '../core/flight/feet-and-miles.ts';

/**
 * The nine-parameter pitch of Robinson & Kagan (teaching slides) and D. Kagan, Phys. Teach. 47:412, 2009: published, in ft and s
 * at y = 50 ft. The numbers worked out from it are computed independently unless marked published. g = 32.174 ft/s².
 */
const feet = (x: number, y: number, z: number): Vector => scale([x, y, z], footM);
const pitch = {
  positionM: feet(1.664, 50, 6.597),
  velocityMps: feet(-6.791, -123.055, -5.721),
  accelerationMps2: feet(13.233, 25.802, -17.54),
};
const plateYM = (17 / 12) * footM;
const releaseYM = 55 * footM;
const gravity = 32.174 * footM;
const airDensityKgM3 = ((0.005383 / footM) * 2 * ball.massKg) / (Math.PI * ball.radiusM ** 2);

describe('The nine-parameter pitch of Robinson & Kagan', () => {
  const arrival = stateAtY(pitch, plateYM)!;

  test('crosses the plate at −112.408 and −1.330 ft/s along y and x (published)', () => {
    expect(Math.abs(arrival.velocityMps[1] / footM + 112.408)).toBeLessThan(0.001); // printed from inputs rounded to 0.001
    expect(arrival.velocityMps[0] / footM).toBeCloseTo(-1.33, 3);
  });

  test('takes 0.41266308 s from 50 ft and ends at 77.154428 mph, at (−0.011666, 2.742704) ft (computed independently)', () => {
    expect(arrival.timeS).toBeCloseTo(0.41266308, 8);
    expect(norm(arrival.velocityMps) / mphMps).toBeCloseTo(77.154428, 5);
    expect(arrival.positionM[0] / footM).toBeCloseTo(-0.011666, 6);
    expect(arrival.positionM[2] / footM).toBeCloseTo(2.742704, 6);
  });

  test('approaches at −6.576420° and −0.678006° (computed independently)', () => {
    expect(verticalApproachRad(arrival.velocityMps) / degreeRad).toBeCloseTo(-6.57642, 6);
    expect(horizontalApproachRad(arrival.velocityMps) / degreeRad).toBeCloseTo(-0.678006, 6);
  });

  test('loses 9.047 % of its speed from 55 ft (computed independently)', () => {
    const release = stateAtY(pitch, releaseYM)!;
    expect(100 * (1 - norm(arrival.velocityMps) / norm(release.velocityMps))).toBeCloseTo(9.047, 3);
  });

  test('moves (16.30208, 18.02801) in with drag kept, over the 0.4531237 s from 55 ft (computed independently)', () => {
    const moved = inducedBreak(
      { ...pitch, accelerationMps2: [pitch.accelerationMps2[0], pitch.accelerationMps2[1], pitch.accelerationMps2[2] + gravity - 9.80665] },
      releaseYM,
      plateYM,
    )!;
    expect(moved.timeS).toBeCloseTo(0.4531237, 7);
    expect(moved.horizontalM / inchM).toBeCloseTo(16.30208, 4);
    expect(moved.verticalM / inchM).toBeCloseTo(18.02801, 4);
  });

  test('has C_D 0.360127, C_L 0.232115 and moves (15.07539, 15.48150) in with drag removed (computed independently)', () => {
    const air = transverseCoefficients(pitch, releaseYM, airDensityKgM3, plateYM, gravity)!;
    expect(air.dragCoefficient).toBeCloseTo(0.360127, 5);
    expect(air.liftCoefficient).toBeCloseTo(0.232115, 5);
    expect(air.magnusMovement.horizontalM / inchM).toBeCloseTo(15.07539, 4);
    expect(air.magnusMovement.verticalM / inchM).toBeCloseTo(15.4815, 4);
  });
});
