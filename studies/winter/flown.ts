import { standardAirDensityKgM3 } from '../../core/flight/air.ts';
import { plate } from '../../core/flight/ball.ts';
import { flyPitch, type Flight, type Launch } from '../../core/flight/fly.ts';
import { spinAxisFromTilt } from '../../core/flight/spin.ts';
import type { Vector } from '../../core/flight/vector.ts';
import type { DrawnShape } from '../../simulators/sampling.ts';

/** Coarse: within a micrometre at the plate. */
const STEP_S = 0.1;
const AIMED_HEIGHT_M = 0.75;

export interface Direction {
  readonly upRad: number;
  readonly rightRad: number;
}

/** A right-hander's throw as drawn, from a release in a direction, to the front of the plate. */
export function flown(drawn: DrawnShape, releaseM: Vector, { upRad, rightRad }: Direction): { readonly launch: Launch; readonly flight: Flight } {
  const { speedMps, unexplained } = drawn;
  const velocityMps: Vector = [speedMps * Math.cos(upRad) * Math.sin(rightRad), -speedMps * Math.cos(upRad) * Math.cos(rightRad), speedMps * Math.sin(upRad)];
  const launch: Launch = { positionM: releaseM, velocityMps, spinRadps: spinAxisFromTilt({ ...drawn, velocityMps }) };
  const conditions = { airDensityKgM3: standardAirDensityKgM3, seamCoefficient: { x: -unexplained.armSide, z: unexplained.vertical }, timeStepS: STEP_S };
  return { launch, flight: flyPitch(launch, conditions) };
}

/** The direction that brings the throw meant over the middle of the plate, low: thrown in mind and mended, as an athlete aims. */
export function aimOf(meant: DrawnShape, releaseM: Vector): Direction {
  const farM = releaseM[1] - plate.frontYM;
  let aim: Direction = { upRad: 0, rightRad: 0 };
  for (let round = 0; round < 3; round += 1) {
    const [x, , z] = flown(meant, releaseM, aim).flight.end.positionM;
    aim = { upRad: aim.upRad + (AIMED_HEIGHT_M - z) / farM, rightRad: aim.rightRad - x / farM };
  }
  return aim;
}
