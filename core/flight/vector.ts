/**
 * A vector in the frame of the flight: origin at the rear point of home plate on the ground,
 * x to the catcher's right, y towards the mound, z up (right-handed). The unit is in the name
 * of whatever holds it: `positionM`, `velocityMps`, `spinRadps`.
 */
export type Vector = readonly [number, number, number];

export function add(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function scale(a: Vector, factor: number): Vector {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function norm(a: Vector): number {
  return Math.hypot(a[0], a[1], a[2]);
}
