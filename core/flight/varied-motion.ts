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

/**
 * The equations of motion of `equationsOfMotion` together with their variational equations: d/dt ∂v/∂θ = (∂a/∂v)·∂v/∂θ + ∂a/∂θ
 * with the derivatives of the acceleration written out; only the slope of the lift law is a central difference, so that any law fits in.
 * Forces add up in `rate` and their derivatives by the velocity in a matrix, one force after the other. Spin does not decay.
 */
export function variedMotion({ airDensityKgM3, windMps: [windX, windY, windZ], law, push }: VariedForces): VariedMotion {
  const k = aerodynamicConstantPerM(airDensityKgM3);
  const gravity = standardGravityMps2; // read once, like the constants of the parts below: they run 200 times a fit
  const unknowns = new Float64Array(3);
  const air = new Float64Array(3);
  const matrix = new Float64Array(9);
  const drag = dragPart(k, unknowns);
  const magnus = magnusPart(k, law, push, unknowns);
  const seam = push.kind === 'seam' ? seamPart(k, unknowns) : null;

  const motion: Derivative = (_, state, rate) => {
    air[0] = state[3]! - windX;
    air[1] = state[4]! - windY;
    air[2] = state[5]! - windZ;
    rate[0] = state[3]!;
    rate[1] = state[4]!;
    rate[2] = state[5]!;
    rate[3] = 0;
    rate[4] = 0;
    rate[5] = -gravity;
    matrix.fill(0);
    drag.push(air, rate, matrix);
    magnus.push(air, rate, matrix);
    seam?.push(air, rate, matrix);
    carry(state, rate, matrix);
    drag.vary(air, rate);
    (seam ?? magnus).vary(air, rate);
  };
  return { motion, unknowns };
}

/** Starts a varied state with place and velocity in the first six unknowns of a fit: the derivatives by the velocity are one, all others nothing yet. */
export function startVaried(unknowns: ArrayLike<number>, into: Float64Array): void {
  into.fill(0);
  for (let i = 0; i < 6; i += 1) into[i] = unknowns[i]!;
  for (let axis = 0; axis < 3; axis += 1) into[6 + 6 * axis + 3 + axis] = 1;
}

interface Part {
  /** Adds the acceleration to `rate` and its derivatives by the velocity, row by row, to `matrix`. */
  push(air: Float64Array, rate: Float64Array, matrix: Float64Array): void;
  /** Adds the derivatives of the acceleration by the unknowns of this force to their columns. After `push`. */
  vary(air: Float64Array, rate: Float64Array): void;
}

/** Where the acceleration of C_D and of the two numbers of the push stands in a rate. */
const dragColumn = 27;
const firstColumn = 33;
const secondColumn = 39;

function add(into: Float64Array, at: number, x: number, y: number, z: number): void {
  into[at] = into[at]! + x;
  into[at + 1] = into[at + 1]! + y;
  into[at + 2] = into[at + 2]! + z;
}

/** Every column moves as the matrix says. */
function carry(state: Float64Array, rate: Float64Array, m: Float64Array): void {
  for (let at = 6; at < variedSize; at += 6) {
    const x = state[at + 3]!;
    const y = state[at + 4]!;
    const z = state[at + 5]!;
    rate[at] = x;
    rate[at + 1] = y;
    rate[at + 2] = z;
    rate[at + 3] = m[0]! * x + m[1]! * y + m[2]! * z;
    rate[at + 4] = m[3]! * x + m[4]! * y + m[5]! * z;
    rate[at + 5] = m[6]! * x + m[7]! * y + m[8]! * z;
  }
}

/** −K·C_D·|v|·v */
function dragPart(k: number, unknowns: Float64Array): Part {
  return {
    push(air, rate, matrix) {
      const x = air[0]!;
      const y = air[1]!;
      const z = air[2]!;
      const speed = Math.sqrt(x * x + y * y + z * z);
      const pull = -k * unknowns[0]! * speed;
      const stretch = (-k * unknowns[0]!) / speed;
      add(rate, 3, pull * x, pull * y, pull * z);
      add(matrix, 0, pull + stretch * x * x, stretch * x * y, stretch * x * z);
      add(matrix, 3, stretch * x * y, pull + stretch * y * y, stretch * y * z);
      add(matrix, 6, stretch * x * z, stretch * y * z, pull + stretch * z * z);
    },
    vary(air, rate) {
      const x = air[0]!;
      const y = air[1]!;
      const z = air[2]!;
      const pull = -k * Math.sqrt(x * x + y * y + z * z);
      add(rate, dragColumn, pull * x, pull * y, pull * z);
    },
  };
}

/** Below this a ball counts as spinning this fast: lift over spin parameter has a limit there, 0/0 has none. */
const leastSpinParameter = 1e-7;
const slopeStep = 1e-4;

/** K·C_L·|v|²·(ω×v)/|ω×v|, written G·(ω×v) with G = K·R·C_L/S, which has no seam where the spin goes through zero. */
function magnusPart(k: number, law: AerodynamicLaw, push: Push, unknowns: Float64Array): Part {
  const { radiusM } = ball;
  const none: Vector = [0, 0, 0];
  const [baseX, baseY, baseZ] = push.kind === 'spin' ? push.along : push.spin;
  const first = Float64Array.from(push.kind === 'spin' ? push.first : none);
  const second = Float64Array.from(push.kind === 'spin' ? push.second : none);
  /** ω×v, then G, G′·R/|v|² and 1/|ω×v|: what `vary` needs of the last `push`. */
  const last = new Float64Array(6);

  /** ∂a/∂q = G·(e×v) + (ω×v)·G′·∂S/∂q, with ∂S/∂q = R/|v|²·(ω×v)·(e×v)/|ω×v| */
  const varyBy = (e: Float64Array, air: Float64Array, rate: Float64Array, at: number): void => {
    const nx = e[1]! * air[2]! - e[2]! * air[1]!;
    const ny = e[2]! * air[0]! - e[0]! * air[2]!;
    const nz = e[0]! * air[1]! - e[1]! * air[0]!;
    const strength = last[3]!;
    const turn = last[4]! * last[5]! * (last[0]! * nx + last[1]! * ny + last[2]! * nz);
    add(rate, at, strength * nx + turn * last[0]!, strength * ny + turn * last[1]!, strength * nz + turn * last[2]!);
  };
  return {
    push(air, rate, matrix) {
      const x = air[0]!;
      const y = air[1]!;
      const z = air[2]!;
      const wx = baseX + unknowns[1]! * first[0]! + unknowns[2]! * second[0]!;
      const wy = baseY + unknowns[1]! * first[1]! + unknowns[2]! * second[1]!;
      const wz = baseZ + unknowns[1]! * first[2]! + unknowns[2]! * second[2]!;
      const mx = wy * z - wz * y;
      const my = wz * x - wx * z;
      const mz = wx * y - wy * x;
      const cross = Math.sqrt(mx * mx + my * my + mz * mz);
      const square = x * x + y * y + z * z;
      const s = Math.max(leastSpinParameter, (radiusM * cross) / square);
      const lift = law.liftCoefficient(s);
      const slope = (law.liftCoefficient(s + slopeStep * s) - law.liftCoefficient(s - slopeStep * s)) / (2 * slopeStep * s);
      const strength = (k * radiusM * lift) / s;
      const bending = (k * radiusM * radiusM * (slope - lift / s)) / (s * square);
      const perCross = cross > 0 ? 1 / cross : 0;
      last[0] = mx;
      last[1] = my;
      last[2] = mz;
      last[3] = strength;
      last[4] = bending;
      last[5] = perCross;
      // G′·∂S/∂v, with ∂S/∂v = R/|v|²·((m×ω)/|m| − 2|m|·v/|v|²) and m = ω×v
      const fade = (2 * cross) / square;
      const sx = bending * ((my * wz - mz * wy) * perCross - fade * x);
      const sy = bending * ((mz * wx - mx * wz) * perCross - fade * y);
      const sz = bending * ((mx * wy - my * wx) * perCross - fade * z);
      add(rate, 3, strength * mx, strength * my, strength * mz);
      add(matrix, 0, mx * sx, mx * sy - strength * wz, mx * sz + strength * wy);
      add(matrix, 3, my * sx + strength * wz, my * sy, my * sz - strength * wx);
      add(matrix, 6, mz * sx - strength * wy, mz * sy + strength * wx, mz * sz);
    },
    vary(air, rate) {
      varyBy(first, air, rate, firstColumn);
      varyBy(second, air, rate, secondColumn);
    },
  };
}

/** K·(|v|²·c − (c·v)·v) with c along x and z: the seam coefficient across the flight. */
function seamPart(k: number, unknowns: Float64Array): Part {
  return {
    push(air, rate, matrix) {
      const x = air[0]!;
      const y = air[1]!;
      const z = air[2]!;
      const cx = k * unknowns[1]!;
      const cz = k * unknowns[2]!;
      const square = x * x + y * y + z * z;
      const along = cx * x + cz * z;
      add(rate, 3, square * cx - along * x, -along * y, square * cz - along * z);
      add(matrix, 0, cx * x - along, 2 * y * cx, 2 * z * cx - cz * x);
      add(matrix, 3, -cx * y, -along, -cz * y);
      add(matrix, 6, 2 * x * cz - cx * z, 2 * y * cz, cz * z - along);
    },
    vary(air, rate) {
      const x = air[0]!;
      const y = air[1]!;
      const z = air[2]!;
      const square = x * x + y * y + z * z;
      add(rate, firstColumn, k * (square - x * x), -k * x * y, -k * x * z);
      add(rate, secondColumn, -k * z * x, -k * z * y, k * (square - z * z));
    },
  };
}
