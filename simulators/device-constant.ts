import type { ThrowBody } from '../core/facts/frames.ts';
import { standardAirDensityKgM3 } from '../core/flight/air.ts';
import { stateAtY, type ConstantAcceleration } from '../core/flight/constant-acceleration.ts';
import { transverseCoefficients } from '../core/flight/movement.ts';
import { fitPath } from '../core/flight/path-fit.ts';
import { tiltFromForce } from '../core/flight/spin.ts';
import { norm, type Vector } from '../core/flight/vector.ts';
import { feetToM, radpsToRpm, radToDeg } from '../core/units/convert.ts';
import type { SimulatedDevice } from './measuring.ts';
import { noisy, written } from './noise.ts';
import { watched } from './watching.ts';

const PER_SECOND = 200;
const POSITION_ERROR_M = 0.005;
/** What the errors of position make of speed, break and inferred tilt, measured on changeups in tests/simulators. */
const SPEED_ERROR_MPS = 0.017;
const MOVEMENT_ERROR_M = 0.007;
const SPIN_ERROR_RPM = 20;
const TILT_ERROR_DEG = 1.5;
const EXTENSION_ERROR_M = 0.02;
/** Where the three vectors hold, when the ball is thrown from farther away. */
const HOLDS_AT_M = feetToM(50);

/** Watches the whole flight, boils it down to constant acceleration in metres, and infers the spin axis from it: a seam's push ends up in the axis. */
export const constantDevice: SimulatedDevice = {
  declares: {
    device: 'radar-tower',
    sight: 'full-flight',
    axis: 'inferred',
    units: { distance: 'm', speed: 'm/s', movement: 'm' },
    standardErrors: { speed: SPEED_ERROR_MPS, movement: MOVEMENT_ERROR_M, spinRate: SPIN_ERROR_RPM, tilt: TILT_ERROR_DEG },
  },
  measure(thrown, random): ThrowBody | null {
    const samples = watched(thrown, { perSecond: PER_SECOND, positionErrorM: POSITION_ERROR_M }, random);
    const releaseYM = thrown.launch.positionM[1];
    const fit = fitPath(samples, { fromYM: releaseYM });
    if (fit.kind === 'problem') return null;
    const at = stateAtY(fit.path, Math.min(HOLDS_AT_M, releaseYM));
    if (at === null) return null;
    const start = at.positionM.map((value) => written(value, 4)) as [number, number, number];
    const spinRpm = Math.max(0, noisy(radpsToRpm(norm(thrown.launch.spinRadps)), SPIN_ERROR_RPM, random));
    return {
      constant: { start, velocity: triple(at.velocityMps), acceleration: triple(fit.path.accelerationMps2), distance: start[1] },
      spin: { rate: written(spinRpm, 0), ...inferredAxis(fit.midFlight, releaseYM, spinRpm) },
      extension: written(noisy(thrown.extensionM, EXTENSION_ERROR_M, random), 2),
    };
  },
};

function inferredAxis(path: ConstantAcceleration, releaseYM: number, spinRpm: number): { tilt?: number; efficiency?: number } {
  const air = transverseCoefficients(path, releaseYM, standardAirDensityKgM3);
  const tiltRad = air && tiltFromForce(air.magnusMps2[0], air.magnusMps2[2]);
  const acrossRadps = air?.transverseSpinRadps ?? null;
  return {
    ...(tiltRad === null ? {} : { tilt: written(radToDeg(tiltRad), 1) }),
    ...(acrossRadps === null || spinRpm === 0 ? {} : { efficiency: written(Math.min(1, radpsToRpm(acrossRadps) / spinRpm), 3) }),
  };
}

function triple(vector: Vector): [number, number, number] {
  return [written(vector[0], 4), written(vector[1], 4), written(vector[2], 4)];
}
