import { plate } from './ball.ts';
import { flyPitch, type Flight } from './fly.ts';
import { inducedBreakBetween } from './movement.ts';
import { spinAxisFromTilt } from './spin.ts';
import { norm, type Vector } from './vector.ts';

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

/** From a release 6 ft up to a ball 2½ ft up at the plate, the middle of the zone: where a pitch is aimed if nothing else is known. */
const usualDropM = 1.0668;
const closeEnoughM = 1e-4;

/**
 * What a device that sees spin but no path lets us compute: the break of the flight of `flightFromSpin`, since half a degree of
 * elevation changes drag-kept break by 0.3 in. Straight at the plate: a pitch really thrown 1.2° to the side differs by 0.7 in across.
 * Induced break in the convention of `inducedBreak` (drag kept, release to front of plate).
 * It cannot hold any movement that spin does not explain. Null when the ball is too slow to get there.
 */
export function movementFromSpin(spinThrow: SpinThrow): SpinMovement | null {
  const flight = flightFromSpin(spinThrow);
  return flight && { ...inducedBreakBetween(flight.start, flight.end), plateSpeedMps: norm(flight.end.velocityMps) };
}

/**
 * The ball flown with the default law, launched so that it arrives 3½ ft below its release. Tilt and efficiency refer to the
 * launch direction; heights count from the release. Null when the ball is too slow to get there.
 */
export function flightFromSpin(spinThrow: SpinThrow): Flight | null {
  let climbMps = 0;
  for (let round = 0; round < 12; round += 1) {
    const flight = launchClimbing(climbMps, spinThrow);
    if (flight?.ending !== 'plane') return null;
    const missM = flight.end.positionM[2] + usualDropM;
    if (Math.abs(missM) < closeEnoughM) return flight;
    climbMps -= missM / flight.end.timeS;
  }
  return null;
}

function launchClimbing(climbMps: number, spinThrow: SpinThrow): Flight | null {
  const { releaseSpeedMps, distanceM, airDensityKgM3 } = spinThrow;
  const level = Math.sqrt(releaseSpeedMps ** 2 - climbMps ** 2);
  if (!(level > 0)) return null;
  const velocityMps: Vector = [0, -level, climbMps];
  return flyPitch(
    { positionM: [0, plate.frontYM + distanceM, 0], velocityMps, spinRadps: spinAxisFromTilt({ ...spinThrow, velocityMps }) },
    { airDensityKgM3 },
  );
}
