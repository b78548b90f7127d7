import { aerodynamicConstantPerM, type AerodynamicLaw } from './aerodynamics.ts';
import { ball, standardGravityMps2 } from './ball.ts';
import type { Derivative } from './runge-kutta.ts';
import type { Vector } from './vector.ts';

/** What is looked for across the flight: spin along two axes, rad/s, or, with the spin known, a seam coefficient along x and z. */
export type Push =
  | { readonly kind: 'spin'; readonly first: Vector; readonly second: Vector; readonly along: Vector }
  | { readonly kind: 'seam'; readonly spin: Vector };

export interface VariedForces {
  readonly airDensityKgM3: number;
  readonly windMps: Vector;
  readonly law: AerodynamicLaw;
  readonly push: Push;
}

/** Columns: how place and velocity answer to vx, vy, vz at the start, to C_D and to the two numbers of the push. */
export const columnCount = 6;
/** Place, velocity and, column by column, their derivatives. Derivatives by the starting place are the unit matrix for ever. */
export const variedSize = 6 + 6 * columnCount;

export interface VariedMotion {
  readonly motion: Derivative;
  /** C_D and the two numbers of the push; written by whoever looks for them. */
  readonly unknowns: Float64Array;
}

/** Below this a ball counts as spinning this fast: lift over spin parameter has a limit there, 0/0 has none. */
const leastSpinParameter = 1e-7;
const slopeStep = 1e-4;

/**
 * The equations of motion of `equationsOfMotion` together with their variational equations: d/dt ∂v/∂θ = (∂a/∂v)·∂v/∂θ + ∂a/∂θ
 * with the derivatives of the acceleration written out; only the slope of the lift law is a central difference, so that any law fits in.
 * Lift is K·R·G·(ω×v) with G = C_L/S, which has no seam where the spin goes through zero.
 */
export function variedMotion({ airDensityKgM3, windMps, law, push }: VariedForces): VariedMotion {
  const k = aerodynamicConstantPerM(airDensityKgM3);
  const [windX, windY, windZ] = windMps;
  const spins = push.kind === 'spin';
  const [baseX, baseY, baseZ] = spins ? push.along : push.spin;
  const [e1x, e1y, e1z] = spins ? push.first : [0, 0, 0];
  const [e2x, e2y, e2z] = spins ? push.second : [0, 0, 0];
  const unknowns = new Float64Array(3);
  const { radiusM } = ball; // read once, like gravity: the equations run 200 times a fit
  const gravity = standardGravityMps2;

  const motion: Derivative = (_, state, rate) => {
    const q1 = unknowns[1]!;
    const q2 = unknowns[2]!;
    const ux = state[3]! - windX;
    const uy = state[4]! - windY;
    const uz = state[5]! - windZ;
    const square = ux * ux + uy * uy + uz * uz;
    const speed = Math.sqrt(square);
    const wx = baseX + q1 * e1x + q2 * e2x;
    const wy = baseY + q1 * e1y + q2 * e2y;
    const wz = baseZ + q1 * e1z + q2 * e2z;
    const mx = wy * uz - wz * uy;
    const my = wz * ux - wx * uz;
    const mz = wx * uy - wy * ux;
    const cross = Math.sqrt(mx * mx + my * my + mz * mz);
    const perCross = cross > 0 ? 1 / cross : 0;

    const s = Math.max(leastSpinParameter, (radiusM * cross) / square);
    const d = slopeStep * s;
    const lift = law.liftCoefficient(s);
    const slope = (law.liftCoefficient(s + d) - law.liftCoefficient(s - d)) / (2 * d);
    const g = (k * radiusM * lift) / s;
    const bend = (k * radiusM * (slope - lift / s)) / s;

    // ∂S/∂v = R/|v|²·((m×ω)/|m| − 2|m|·v/|v|²), times the bend of the law
    const perSquare = (bend * radiusM) / square;
    const fade = (2 * cross) / square;
    const sx = perSquare * ((my * wz - mz * wy) * perCross - fade * ux);
    const sy = perSquare * ((mz * wx - mx * wz) * perCross - fade * uy);
    const sz = perSquare * ((mx * wy - my * wx) * perCross - fade * uz);

    const drag = k * unknowns[0]! * speed;
    const stretch = (k * unknowns[0]!) / speed;
    const cx = spins ? 0 : k * q1;
    const cz = spins ? 0 : k * q2;
    const along = cx * ux + cz * uz;

    rate[0] = state[3]!;
    rate[1] = state[4]!;
    rate[2] = state[5]!;
    rate[3] = -drag * ux + g * mx + square * cx - along * ux;
    rate[4] = -drag * uy + g * my - along * uy;
    rate[5] = -gravity - drag * uz + g * mz + square * cz - along * uz;

    // ∂a/∂v
    const axx = -drag - stretch * ux * ux + mx * sx + 2 * ux * cx - cx * ux - along;
    const axy = -stretch * ux * uy - g * wz + mx * sy + 2 * uy * cx;
    const axz = -stretch * ux * uz + g * wy + mx * sz + 2 * uz * cx - cz * ux;
    const ayx = -stretch * uy * ux + g * wz + my * sx - cx * uy;
    const ayy = -drag - stretch * uy * uy + my * sy - along;
    const ayz = -stretch * uy * uz - g * wx + my * sz - cz * uy;
    const azx = -stretch * uz * ux - g * wy + mz * sx + 2 * ux * cz - cx * uz;
    const azy = -stretch * uz * uy + g * wx + mz * sy + 2 * uy * cz;
    const azz = -drag - stretch * uz * uz + mz * sz + 2 * uz * cz - cz * uz - along;
    for (let at = 6; at < variedSize; at += 6) {
      const dx = state[at + 3]!;
      const dy = state[at + 4]!;
      const dz = state[at + 5]!;
      rate[at] = dx;
      rate[at + 1] = dy;
      rate[at + 2] = dz;
      rate[at + 3] = axx * dx + axy * dy + axz * dz;
      rate[at + 4] = ayx * dx + ayy * dy + ayz * dz;
      rate[at + 5] = azx * dx + azy * dy + azz * dz;
    }

    // ∂a/∂C_D
    const pull = -k * speed;
    rate[27] = rate[27]! + pull * ux;
    rate[28] = rate[28]! + pull * uy;
    rate[29] = rate[29]! + pull * uz;
    if (spins) {
      // ∂a/∂q = G·(e×v) + m·(bend·∂S/∂q), ∂S/∂q = R/|v|²·m·(e×v)/|m|
      const n1x = e1y * uz - e1z * uy;
      const n1y = e1z * ux - e1x * uz;
      const n1z = e1x * uy - e1y * ux;
      const t1 = perSquare * perCross * (mx * n1x + my * n1y + mz * n1z);
      rate[33] = rate[33]! + g * n1x + t1 * mx;
      rate[34] = rate[34]! + g * n1y + t1 * my;
      rate[35] = rate[35]! + g * n1z + t1 * mz;
      const n2x = e2y * uz - e2z * uy;
      const n2y = e2z * ux - e2x * uz;
      const n2z = e2x * uy - e2y * ux;
      const t2 = perSquare * perCross * (mx * n2x + my * n2y + mz * n2z);
      rate[39] = rate[39]! + g * n2x + t2 * mx;
      rate[40] = rate[40]! + g * n2y + t2 * my;
      rate[41] = rate[41]! + g * n2z + t2 * mz;
    } else {
      rate[33] = rate[33]! + k * (square - ux * ux);
      rate[34] = rate[34]! - k * ux * uy;
      rate[35] = rate[35]! - k * ux * uz;
      rate[39] = rate[39]! - k * uz * ux;
      rate[40] = rate[40]! - k * uz * uy;
      rate[41] = rate[41]! + k * (square - uz * uz);
    }
  };
  return { motion, unknowns };
}

/** A varied state at its start: the derivatives by the starting velocity are one, all others nothing yet. */
export function startVaried(positionM: ArrayLike<number>, velocityMps: ArrayLike<number>, into: Float64Array): void {
  into.fill(0);
  for (let axis = 0; axis < 3; axis += 1) {
    into[axis] = positionM[axis]!;
    into[3 + axis] = velocityMps[axis]!;
    into[6 + 6 * axis + 3 + axis] = 1;
  }
}
