import { plate } from './ball.ts';
import { flyPitch } from './fly.ts';
import { inducedBreakBetween } from './movement.ts';
import { spinAxisFromTilt } from './spin.ts';
import { norm } from './vector.ts';

export interface SpinThrow {
  readonly releaseSpeedMps: number;
  readonly spinRpm: number;
  readonly tiltRad: number;
  readonly efficiency: number;
  /** Release to the front of the plate (or to the glove, in catch play). */
  readonly distanceM: number;
  readonly airDensityKgM3: number;
  readonly gyroSign?: 1 | -1;
}

export interface SpinMovement {
  readonly verticalM: number;
  readonly horizontalM: number;
  readonly timeS: number;
  readonly plateSpeedMps: number;
}

/**
 * What a device that sees spin but no path lets us compute: the ball is flown, from a level release, with the default law.
 * Induced break in the convention of `inducedBreak` (drag kept, release to front of plate). It cannot hold any movement
 * that spin does not explain. Null when the ball would not get there.
 */
export function movementFromSpin(spinThrow: SpinThrow): SpinMovement | null {
  const { releaseSpeedMps, distanceM, airDensityKgM3 } = spinThrow;
  const flight = flyPitch(
    {
      positionM: [0, plate.frontYM + distanceM, 0],
      velocityMps: [0, -releaseSpeedMps, 0],
      spinRadps: spinAxisFromTilt(spinThrow),
    },
    { airDensityKgM3 },
  );
  if (flight.ending !== 'plane') return null;
  return { ...inducedBreakBetween(flight.start, flight.end), plateSpeedMps: norm(flight.end.velocityMps) };
}
