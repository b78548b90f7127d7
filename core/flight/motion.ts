import { aerodynamicConstantPerM, defaultLaw, type AerodynamicLaw } from './aerodynamics.ts';
import { ball, standardGravityMps2 } from './ball.ts';
import type { Derivative } from './runge-kutta.ts';
import type { Vector } from './vector.ts';

/** A force across the flight that spin does not explain: coefficients along the frame's x (catcher's right) and z (up), not along the arm side. */
export interface SeamCoefficient {
  readonly x: number;
  readonly z: number;
}

export interface Forces {
  readonly airDensityKgM3: number;
  /** Velocity of the air over the ground; still air when absent. The forces follow the velocity against the air. */
  readonly windMps?: Vector;
  /** K·C·|v|² along this direction, projected across the velocity; a coefficient of 0.01 is 0.93 in over a pitch at any speed. */
  readonly seamCoefficient?: SeamCoefficient;
  readonly law?: AerodynamicLaw;
  readonly gravityMps2?: number;
  /** Spin falls as exp(−t·|v|/length); off when absent. A. M. Nathan uses 30 s × 100 mph = 1341.12 m. */
  readonly spinDecayLengthM?: number;
}

const rpmPerRadps = 30 / Math.PI;

/**
 * The equations of motion over the state (x, y, z, vx, vy, vz), SI, with v the velocity against the air:
 * a = −g·ẑ − K·C_D·|v|·v + K·C_L·|v|²·(ω×v)/|ω×v| + K·|v|²·(seam across v). The spin axis stays fixed in space.
 */
export function equationsOfMotion(spinRadps: Vector, forces: Forces): Derivative {
  const [wx, wy, wz] = spinRadps;
  const [windX, windY, windZ] = forces.windMps ?? [0, 0, 0];
  const k = aerodynamicConstantPerM(forces.airDensityKgM3);
  const law = forces.law ?? defaultLaw;
  const gravity = forces.gravityMps2 ?? standardGravityMps2;
  const seamX = forces.seamCoefficient?.x ?? 0;
  const seamZ = forces.seamCoefficient?.z ?? 0;
  const pushed = seamX !== 0 || seamZ !== 0;
  const decayPerM = forces.spinDecayLengthM === undefined ? 0 : 1 / forces.spinDecayLengthM;
  const { radiusM } = ball; // read once: the equations run 80 times a flight
  const totalRpm = Math.hypot(wx, wy, wz) * rpmPerRadps;
  const steadyDrag = law.dragCoefficient(totalRpm);

  return (timeS, state, rate) => {
    const vx = state[3]! - windX;
    const vy = state[4]! - windY;
    const vz = state[5]! - windZ;
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const left = decayPerM === 0 ? 1 : Math.exp(-timeS * speed * decayPerM);
    const drag = k * (decayPerM === 0 ? steadyDrag : law.dragCoefficient(totalRpm * left)) * speed;
    const mx = wy * vz - wz * vy;
    const my = wz * vx - wx * vz;
    const mz = wx * vy - wy * vx;
    const cross = Math.sqrt(mx * mx + my * my + mz * mz);
    const spinParameter = cross > 0 ? (radiusM * left * cross) / (speed * speed) : 0;
    const lift = cross > 0 ? (k * law.liftCoefficient(spinParameter) * speed * speed) / cross : 0;
    rate[0] = state[3]!;
    rate[1] = state[4]!;
    rate[2] = state[5]!;
    rate[3] = -drag * vx + lift * mx;
    rate[4] = -drag * vy + lift * my;
    rate[5] = -gravity - drag * vz + lift * mz;
    if (!pushed) return;
    const push = k * speed * speed;
    const seamAlong = k * (seamX * vx + seamZ * vz); // × |v|, so that a ball at rest needs no division
    rate[3] += push * seamX - seamAlong * vx;
    rate[4] -= seamAlong * vy;
    rate[5] += push * seamZ - seamAlong * vz;
  };
}
