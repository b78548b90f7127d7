import type { ThrowBody } from '../core/facts/frames.ts';
import { standardAirDensityKgM3 } from '../core/flight/air.ts';
import { plate } from '../core/flight/ball.ts';
import { movementFromSpin } from '../core/flight/spin-flight.ts';
import { tiltFromSpin } from '../core/flight/spin.ts';
import { norm } from '../core/flight/vector.ts';
import { degToRad, mpsToMph, mphToMps, mToInches, radpsToRpm, radToDeg } from '../core/units/convert.ts';
import type { SimulatedDevice } from './measuring.ts';
import { noisy, written } from './noise.ts';

const SPEED_ERROR_MPH = 0.3;
const SPIN_ERROR_RPM = 15;
const TILT_ERROR_DEG = 2;
const EFFICIENCY_ERROR = 0.02;
/** What these errors make of a break that is computed from them. */
const MOVEMENT_ERROR_IN = 0.7;

/** Reads speed and spin near the hand and computes the movement from them; what a seam does it cannot know. */
export const spinDevice: SimulatedDevice = {
  declares: {
    device: 'spin-reader',
    sight: 'spin-only',
    axis: 'measured',
    units: { distance: 'ft', speed: 'mph', movement: 'in' },
    standardErrors: { speed: SPEED_ERROR_MPH, movement: MOVEMENT_ERROR_IN, spinRate: SPIN_ERROR_RPM, tilt: TILT_ERROR_DEG },
  },
  measure({ launch }, random): ThrowBody | null {
    const spin = tiltFromSpin(launch.spinRadps, launch.velocityMps);
    if (spin === null || spin.tiltRad === null) return null;
    const releaseSpeed = written(noisy(mpsToMph(norm(launch.velocityMps)), SPEED_ERROR_MPH, random), 1);
    const rate = written(Math.max(0, noisy(radpsToRpm(norm(launch.spinRadps)), SPIN_ERROR_RPM, random)), 0);
    const tilt = written((noisy(radToDeg(spin.tiltRad), TILT_ERROR_DEG, random) + 360) % 360, 1);
    const efficiency = written(Math.min(1, Math.max(0, noisy(spin.efficiency, EFFICIENCY_ERROR, random))), 3);
    const moved = movementFromSpin({
      releaseSpeedMps: mphToMps(releaseSpeed),
      spinRpm: rate,
      tiltRad: degToRad(tilt),
      efficiency,
      distanceM: launch.positionM[1] - plate.frontYM,
      airDensityKgM3: standardAirDensityKgM3,
    });
    const breaks = moved === null ? {} : { verticalBreak: written(mToInches(moved.verticalM), 1), horizontalBreak: written(mToInches(moved.horizontalM), 1) };
    return { summary: { releaseSpeed, ...breaks }, spin: { rate, tilt, efficiency } };
  },
};
