import { add, scale, type Vector } from './vector.ts';

/** A path as nine numbers: where the ball is at t = 0, how fast, and one acceleration (gravity included) for the whole flight. */
export interface ConstantAcceleration {
  readonly positionM: Vector;
  readonly velocityMps: Vector;
  readonly accelerationMps2: Vector;
}

export interface PathState {
  readonly timeS: number;
  readonly positionM: Vector;
  readonly velocityMps: Vector;
}

/**
 * When the ball passes the plane `yM`, seconds from t = 0 (negative before it), on the branch it is travelling on at t = 0.
 * Null when it never does. Written as 2Δ/(−vy ± √…) because the usual form loses every digit as ay goes to zero.
 */
export function timeAtY(path: ConstantAcceleration, yM: number): number | null {
  const distanceM = path.positionM[1] - yM;
  if (distanceM === 0) return 0;
  const vy = path.velocityMps[1];
  const discriminant = vy * vy - 2 * path.accelerationMps2[1] * distanceM;
  if (!(discriminant >= 0)) return null;
  const root = Math.sqrt(discriminant);
  const timeS = (2 * distanceM) / (vy <= 0 ? -vy + root : -vy - root);
  return Number.isFinite(timeS) ? timeS : null;
}

export function stateAtTime(path: ConstantAcceleration, timeS: number): PathState {
  const { positionM, velocityMps, accelerationMps2 } = path;
  const meanVelocity = add(velocityMps, scale(accelerationMps2, timeS / 2));
  return {
    timeS,
    positionM: add(positionM, scale(meanVelocity, timeS)),
    velocityMps: add(velocityMps, scale(accelerationMps2, timeS)),
  };
}

/** The state where the ball passes the plane `yM`; null when it never does. */
export function stateAtY(path: ConstantAcceleration, yM: number): PathState | null {
  const timeS = timeAtY(path, yM);
  return timeS === null ? null : stateAtTime(path, timeS);
}
