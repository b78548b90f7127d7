import { mphToMps } from '../units/convert.ts';
import { standardAirDensityKgM3 } from './air.ts';
import { flyPitch } from './fly.ts';
import { inducedBreakBetween } from './movement.ts';
import { spinAxisFromTilt } from './spin.ts';
import { norm, scale, type Vector } from './vector.ts';

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

/** Five or so steps a pitch: within 2 µm of the shipped step count at the plate, and five times as quick. */
const coarseStepS = 0.1;

/** The separation that spin alone gives a throw, by a real flight to the front of the plate. Null when the ball does not get there. */
export function separationBySpin(arm: Arm, thrown: ArmThrow): Separation | null {
  const velocityMps = scale(arm.direction, thrown.speedMps / norm(arm.direction));
  const launch = { positionM: arm.releaseM, velocityMps, spinRadps: spinAxisFromTilt({ ...thrown, velocityMps }) };
  const flight = flyPitch(launch, { airDensityKgM3: arm.airDensityKgM3, timeStepS: coarseStepS });
  if (flight.ending !== 'plane') return null;
  const moved = inducedBreakBetween(flight.start, flight.end);
  return { verticalM: moved.verticalM - arm.fastball.verticalM, armSideM: -moved.horizontalM - arm.fastball.armSideM };
}

/** What is known of an athlete's fastball, in a right-hander's terms. */
export interface KnownFastball extends Separation {
  readonly releaseM: Vector;
  readonly velocityMps: Vector;
}

/** Typical of changeups against the same arm's fastball. From memory, not published: a start until the athlete's own are known. */
const slowerMps: Span = { low: mphToMps(6), high: mphToMps(12) };
const changeupSpinRpm: Span = { low: 1400, high: 2000 };
const changeupEfficiency: Span = { low: 0.6, high: 1 };

/**
 * The arm of an athlete of whom only the fastball is known: 6–12 mph slower, 1400–2000 rpm, efficiency 0.6–1, from the fastball's
 * release and in its direction. What is known of the athlete's own changeup replaces the rest: `known`.
 */
export function armFromFastball(fastball: KnownFastball, known: Partial<Pick<Arm, 'speedMps' | 'spinRpm' | 'efficiency' | 'airDensityKgM3'>> = {}): Arm {
  const { releaseM, velocityMps, verticalM, armSideM } = fastball;
  const speed = norm(velocityMps);
  return {
    releaseM,
    direction: scale(velocityMps, 1 / speed),
    speedMps: { low: speed - slowerMps.high, high: speed - slowerMps.low },
    spinRpm: changeupSpinRpm,
    efficiency: changeupEfficiency,
    fastball: { verticalM, armSideM },
    airDensityKgM3: standardAirDensityKgM3,
    ...known,
  };
}
