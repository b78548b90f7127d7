import { mphToMps } from '../units/convert.ts';
import { defaultLaw, type AerodynamicLaw } from './aerodynamics.ts';
import type { PlatePlace } from './aim.ts';
import { standardAirDensityKgM3 } from './air.ts';
import { flyPitch, type Flight } from './fly.ts';
import { inducedBreakBetween } from './movement.ts';
import { spinAxisFromTilt } from './spin.ts';
import { add, norm, scale, type Vector } from './vector.ts';

/** From the least to the most of something. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Vertical and arm-side movement beyond the fastball's: a point of the separation plane. Down is negative. */
export interface Separation {
  readonly verticalM: number;
  readonly armSideM: number;
}

/**
 * What an athlete can do with a ball, in a right-hander's terms: arm side is −x and tilt 3:00. The caller mirrors a left-hander.
 * Over which distance is in the release: y runs from the rear point of the plate.
 */
export interface Arm {
  readonly releaseM: Vector;
  /** Of the launch; its length means nothing. */
  readonly direction: Vector;
  /** Where on the plate its throws go: each is launched so that it gets there. When absent all are launched in `direction`. */
  readonly aim?: PlatePlace;
  readonly speedMps: Span;
  readonly spinRpm: Span;
  /** Within 0–1. */
  readonly efficiency: Span;
  /** The athlete's own induced breaks, drag kept, release to front of plate. */
  readonly fastball: Separation;
  readonly airDensityKgM3: number;
}

/** One throw of an arm. */
export interface ArmThrow {
  readonly speedMps: number;
  readonly spinRpm: number;
  readonly efficiency: number;
  /** As in `TiltedSpin`: 0 = 12:00, π/2 = 3:00. */
  readonly tiltRad: number;
  /** Whether the gyro part points along the flight or against it. */
  readonly gyroSign: 1 | -1;
}

/** Five or so steps a pitch: within 1 µm of the shipped step count at the plate. */
const coarseStepS = 0.1;

/**
 * The separation that spin alone gives a throw, by a real flight to the front of the plate. A changeup is launched higher than a
 * fastball to the same place, and each degree turns 0.6 in of drag into break: so it is flown twice, the second time aimed by what
 * the first one missed, which for a known fastball leaves less than a hundredth of an inch. Null when the ball does not get there.
 */
export function separationBySpin(arm: Arm, thrown: ArmThrow, law: AerodynamicLaw = defaultLaw): Separation | null {
  const first = launched(arm, thrown, arm.direction, law);
  const flight = first === null || arm.aim === undefined ? first : launched(arm, thrown, towards(arm.aim, first), law);
  if (flight === null) return null;
  const moved = inducedBreakBetween(flight.start, flight.end);
  return { verticalM: moved.verticalM - arm.fastball.verticalM, armSideM: -moved.horizontalM - arm.fastball.armSideM };
}

/** The flight of a throw launched in a direction; null when it does not get to the plate. */
function launched({ releaseM, airDensityKgM3 }: Arm, thrown: ArmThrow, direction: Vector, law: AerodynamicLaw): Flight | null {
  const velocityMps = scale(direction, thrown.speedMps / norm(direction));
  const launch = { positionM: releaseM, velocityMps, spinRadps: spinAxisFromTilt({ ...thrown, velocityMps }) };
  const flight = flyPitch(launch, { airDensityKgM3, law, timeStepS: coarseStepS });
  return flight.ending === 'plane' ? flight : null;
}

/** The direction in which a throw that went like this would have to leave to cross the plate at a place: drag and Magnus force turn with it. */
function towards({ xM, zM }: PlatePlace, { start, end }: Flight): Vector {
  const perMetre = start.velocityMps[1] / (end.positionM[1] - start.positionM[1]);
  return add(start.velocityMps, [(xM - end.positionM[0]) * perMetre, 0, (zM - end.positionM[2]) * perMetre]);
}

/** What is known of an athlete's fastball, in a right-hander's terms. */
export interface KnownFastball extends Separation {
  readonly releaseM: Vector;
  readonly velocityMps: Vector;
  /** Where it crosses the plate; its throws are aimed there. */
  readonly plate?: PlatePlace;
}

/** Typical of changeups against the same arm's fastball. From memory, not published: a start until the athlete's own are known. */
const slowerMps: Span = { low: mphToMps(6), high: mphToMps(12) };
const changeupSpinRpm: Span = { low: 1400, high: 2000 };
const changeupEfficiency: Span = { low: 0.6, high: 1 };

/**
 * The arm of an athlete of whom only the fastball is known: 6–12 mph slower, 1400–2000 rpm, efficiency 0.6–1, from the fastball's
 * release to where the fastball goes. What is known of the athlete's own changeup replaces the rest: `known`.
 */
export function armFromFastball(fastball: KnownFastball, known: Partial<Pick<Arm, 'speedMps' | 'spinRpm' | 'efficiency' | 'airDensityKgM3'>> = {}): Arm {
  const { releaseM, velocityMps, plate, verticalM, armSideM } = fastball;
  const speed = norm(velocityMps);
  return {
    releaseM,
    direction: scale(velocityMps, 1 / speed),
    ...(plate && { aim: plate }),
    speedMps: { low: speed - slowerMps.high, high: speed - slowerMps.low },
    spinRpm: changeupSpinRpm,
    efficiency: changeupEfficiency,
    fastball: { verticalM, armSideM },
    airDensityKgM3: standardAirDensityKgM3,
    ...known,
  };
}
