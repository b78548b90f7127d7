import type { Vector } from './vector.ts';

/** Angle of the flight against the ground; negative is falling. For a ball flying towards the plate. */
export function verticalApproachRad(velocityMps: Vector): number {
  return Math.atan2(velocityMps[2], -velocityMps[1]);
}

/** Angle of the flight against the plate's axis; positive is towards +x, a right-hander's glove side. */
export function horizontalApproachRad(velocityMps: Vector): number {
  return Math.atan2(velocityMps[0], -velocityMps[1]);
}
