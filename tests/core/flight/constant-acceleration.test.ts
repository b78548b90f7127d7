import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flightTimeS } from '../../../core/flight/arrival.ts';
import { stateAtTime, stateAtY, timeAtY } from '../../../core/flight/constant-acceleration.ts';
import { inducedBreak, transverseCoefficients } from '../../../core/flight/movement.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('A path of constant acceleration', () => {
  test('passes a plane at the moment it says, before or after t = 0', () => {
    fc.assert(
      fc.property(between(14, 18), between(-48, -20), between(-5, 12), between(0, 18.4), (y0, vy, ay, yM) => {
        const path = { positionM: [0.3, y0, 1.8] as const, velocityMps: [1, vy, -1] as const, accelerationMps2: [-3, ay, -9] as const };
        const timeS = timeAtY(path, yM)!;
        expect(stateAtTime(path, timeS).positionM[1]).toBeCloseTo(yM, 9);
        expect(Math.sign(timeS)).toBe(Math.sign(y0 - yM));
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test('that turns round before the plate, or stands still, never gets there: no time, no break, no coefficients', () => {
    const path = { positionM: [0, 17, 2] as const, velocityMps: [0, -10, 0] as const, accelerationMps2: [0, 20, -9.8] as const };
    const still = { ...path, velocityMps: [0, 0, 0] as const, accelerationMps2: [0, 0, 0] as const };
    for (const stuck of [path, still]) {
      expect(timeAtY(stuck, 0.4318)).toBeNull();
      expect(stateAtY(stuck, 0.4318)).toBeNull();
      expect(flightTimeS(stuck, 17)).toBeNull();
      expect(inducedBreak(stuck, 17)).toBeNull();
      expect(transverseCoefficients(stuck, 17, 1.2)).toBeNull();
    }
  });

  test('measures flight time from release to plate whatever its t = 0 is', () => {
    const path = { positionM: [0, 15.24, 1.8] as const, velocityMps: [0, -38, -1] as const, accelerationMps2: [0, 8, -6] as const };
    const later = stateAtTime(path, 0.2);
    const same = { ...path, positionM: later.positionM, velocityMps: later.velocityMps };
    expect(flightTimeS(same, 16.764)).toBeCloseTo(flightTimeS(path, 16.764)!, 12);
    expect(inducedBreak(same, 16.764)!.verticalM).toBeCloseTo(inducedBreak(path, 16.764)!.verticalM, 12);
  });

  test('with lift no spin can give has no spin, but still its coefficient', () => {
    const path = { positionM: [0, 16.764, 1.8] as const, velocityMps: [0, -38, 0] as const, accelerationMps2: [0, 8, 6] as const };
    const air = transverseCoefficients(path, 16.764, 1.2)!;
    expect(air.transverseSpinRadps).toBeNull();
    expect(air.liftCoefficient).toBeGreaterThan(0.48);
  });
});
