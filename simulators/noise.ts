import { norm, scale, add, type Vector } from '../core/flight/vector.ts';
import type { Random } from './random.ts';

/** A number as an instrument writes it down. */
export function written(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

export function noisy(value: number, standardError: number, random: Random): number {
  return value + standardError * random.normal();
}

export function noisyVector([x, y, z]: Vector, standardError: number, random: Random): Vector {
  return [noisy(x, standardError, random), noisy(y, standardError, random), noisy(z, standardError, random)];
}

/** A unit vector in the direction of `axis`, off by `errorRad` in each of two directions across it. */
export function noisyDirection(axis: Vector, errorRad: number, random: Random): Vector {
  const turned = add(scale(axis, 1 / norm(axis)), noisyVector([0, 0, 0], errorRad, random));
  return scale(turned, 1 / norm(turned));
}
