import type { ConstantAcceleration } from './constant-acceleration.ts';
import type { Vector } from './vector.ts';

/** A number without the sign of a negative zero, so that mirrored twice is the same bits. */
const flip = (value: number): number => 0 - value;

/** Left and right exchanged for a place, velocity, acceleration or force: x → −x. */
export function mirrorVector([x, y, z]: Vector): Vector {
  return [flip(x), y, z];
}

/** Left and right exchanged for a spin: an axial vector keeps the part across the mirror and turns the others, (ωx, −ωy, −ωz). */
export function mirrorSpin([x, y, z]: Vector): Vector {
  return [x, flip(y), flip(z)];
}

/** 1:30 becomes 10:30; 12:00 and 6:00 stay. In [0, 2π). */
export function mirrorTilt(tiltRad: number): number {
  const turn = 2 * Math.PI;
  const mirrored = (((turn - tiltRad) % turn) + turn) % turn;
  return mirrored === turn ? 0 : mirrored;
}

export function mirrorPath(path: ConstantAcceleration): ConstantAcceleration {
  return {
    positionM: mirrorVector(path.positionM),
    velocityMps: mirrorVector(path.velocityMps),
    accelerationMps2: mirrorVector(path.accelerationMps2),
  };
}
