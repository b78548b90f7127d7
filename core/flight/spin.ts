import { splitAlong } from './aerodynamics.ts';
import { add, cross, norm, scale, type Vector } from './vector.ts';

const turn = 2 * Math.PI;
const rpmPerRadps = 30 / Math.PI;
const towardsPlate: Vector = [0, -1, 0];

/** An angle within [0, 2π). */
export function wrapTurn(angleRad: number): number {
  const wrapped = ((angleRad % turn) + turn) % turn;
  return wrapped === turn ? 0 : wrapped;
}

export interface TiltedSpin {
  /** The hour hand shows where the Magnus force pushes, as the pitcher sees it: 0 = 12:00 backspin, π/2 = 3:00 = a right-hander's arm side. */
  readonly tiltRad: number;
  /** Transverse spin over total spin, 0–1; also called active spin ratio. High is not always better. */
  readonly efficiency: number;
  readonly spinRpm: number;
  /** +1 (when absent) if the gyro part points along the flight, −1 if against it. */
  readonly gyroSign?: 1 | -1;
  /** The direction of flight the tilt refers to; straight at the plate when absent. */
  readonly velocityMps?: Vector;
}

/** The spin vector, rad/s, of a tilt. Efficiency outside 0–1 is clamped into it. Convention of the trade; see `TiltedSpin`. */
export function spinAxisFromTilt({ tiltRad, efficiency, spinRpm, gyroSign = 1, velocityMps = towardsPlate }: TiltedSpin): Vector {
  const across = Math.min(1, Math.max(0, efficiency));
  const along = gyroSign * Math.sqrt((1 - across) * (1 + across));
  return scale(axisOf(tiltRad, across, along, velocityMps), spinRpm / rpmPerRadps);
}

export interface GyroSpin extends Omit<TiltedSpin, 'efficiency' | 'gyroSign'> {
  /** From the axis's transverse part to the axis, positive along the flight, −π/2 to π/2; its cosine is the efficiency. */
  readonly gyroRad: number;
}

/**
 * The spin vector, rad/s, of a tilt and a signed gyro angle. To be preferred to the efficiency where both are known: near an
 * efficiency of 1 the cosine forgets half of the digits of the angle, and it never knew the sign.
 */
export function spinAxisFromGyro({ tiltRad, gyroRad, spinRpm, velocityMps = towardsPlate }: GyroSpin): Vector {
  return scale(axisOf(tiltRad, Math.cos(gyroRad), Math.sin(gyroRad), velocityMps), spinRpm / rpmPerRadps);
}

function axisOf(tiltRad: number, across: number, along: number, velocityMps: Vector): Vector {
  const direction = scale(velocityMps, 1 / norm(velocityMps));
  const transverse = cross(direction, forceDirection(tiltRad, direction));
  return add(scale(transverse, across), scale(direction, along));
}

/** The unit vector across the flight whose picture in the x–z plane has this tilt. */
function forceDirection(tiltRad: number, direction: Vector): Vector {
  const x = -Math.sin(tiltRad);
  const z = Math.cos(tiltRad);
  const force: Vector = [x, -(x * direction[0] + z * direction[2]) / direction[1], z];
  return scale(force, 1 / norm(force));
}

export interface Tilt {
  /** In [0, 2π), as in `TiltedSpin`; null when no spin lies across the flight. */
  readonly tiltRad: number | null;
  readonly efficiency: number;
  /** Angle between the axis and its transverse part, positive when the gyro part points along the flight; |gyroRad| = acos(efficiency). */
  readonly gyroRad: number;
  readonly transverseRpm: number;
}

/** Tilt, efficiency and gyro angle of a spin vector on a ball flying with `velocityMps`. Null for a ball without spin. */
export function tiltFromSpin(spinRadps: Vector, velocityMps: Vector = towardsPlate): Tilt | null {
  const total = norm(spinRadps);
  if (!(total > 0)) return null;
  const { along, across } = splitAlong(spinRadps, velocityMps);
  const transverse = norm(across);
  const force = cross(across, velocityMps);
  return {
    tiltRad: transverse > 1e-9 * total ? tiltFromForce(force[0], force[2]) : null,
    efficiency: Math.min(1, transverse / total),
    gyroRad: Math.atan2(along, transverse),
    transverseRpm: transverse * rpmPerRadps,
  };
}

/** Tilt of a push towards (x, z) of the frame, in [0, 2π); null for no push. */
export function tiltFromForce(x: number, z: number): number | null {
  return x === 0 && z === 0 ? null : wrapTurn(Math.atan2(-x, z));
}

/** A tilt as the face of a clock, 12:00 to 11:59, rounded to the minute (half a degree). */
export function tiltToClock(tiltRad: number): { hours: number; minutes: number } {
  const minutes = Math.round((wrapTurn(tiltRad) / turn) * 720) % 720;
  return { hours: Math.floor(minutes / 60) || 12, minutes: minutes % 60 };
}

/** The tilt of a clock reading, in [0, 2π); 12 and 0 hours are the same. */
export function tiltFromClock({ hours, minutes }: { readonly hours: number; readonly minutes: number }): number {
  return (((hours % 12) * 60 + minutes) / 720) * turn;
}
