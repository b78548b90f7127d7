import { aerodynamicConstantPerM, spinParameterForLift, spinParameterOf, splitAlong, type AerodynamicLaw } from './aerodynamics.ts';
import { ball, standardGravityMps2 } from './ball.ts';
import type { ConstantAcceleration } from './constant-acceleration.ts';
import { unknownCount } from './followed-flight.ts';
import type { Push } from './varied-motion.ts';
import { add, cross, dot, norm, scale, type Vector } from './vector.ts';

/** What is looked for across a flight of this mean velocity, without or with a spin that was measured. */
export function pushAcross(velocityMps: Vector, alongSpinRadps: number, measuredRadps: Vector | undefined): Push {
  if (measuredRadps !== undefined) return { kind: 'seam', spin: measuredRadps };
  const direction = scale(velocityMps, 1 / norm(velocityMps));
  const right = splitAlong([1, 0, 0], velocityMps).across;
  const first = scale(right, 1 / norm(right));
  return { kind: 'spin', first, second: cross(direction, first), along: scale(direction, alongSpinRadps) };
}

/** More than any pitch has; where no spin gives the push by the default law the fit starts from this. */
const largestStart = 0.6;

/** The unknowns of the fit as constant acceleration suggests them: state, C_D, and the spin that the default law reads from the push. */
export function unknownsOf(guess: ConstantAcceleration, { airDensityKgM3, windMps, push }: { readonly airDensityKgM3: number; readonly windMps: Vector; readonly push: Push }): Float64Array {
  const airMps = add(guess.velocityMps, scale(windMps, -1));
  const speed = norm(airMps);
  const perCoefficient = aerodynamicConstantPerM(airDensityKgM3) * speed * speed;
  const { along, across } = splitAlong(add(guess.accelerationMps2, [0, 0, standardGravityMps2]), airMps);
  const unknowns = new Float64Array(unknownCount);
  unknowns.set(guess.positionM, 0);
  unknowns.set(guess.velocityMps, 3);
  unknowns[6] = -along / perCoefficient;
  const axis = cross(airMps, across);
  const length = norm(axis);
  if (push.kind === 'spin' && length > 0) {
    const spinParameter = Math.min(largestStart, spinParameterForLift(norm(across) / perCoefficient) ?? largestStart);
    const spin = scale(axis, (spinParameter * speed) / (ball.radiusM * length));
    unknowns[7] = dot(spin, push.first);
    unknowns[8] = dot(spin, push.second);
  }
  return unknowns;
}

/** The spin of a fit, along the flight and across it. */
export function spinOf(unknowns: ArrayLike<number>, push: Push): { readonly spinRadps: Vector; readonly transverseRadps: Vector } {
  if (push.kind === 'seam') {
    return { spinRadps: push.spin, transverseRadps: splitAlong(push.spin, [unknowns[3]!, unknowns[4]!, unknowns[5]!]).across };
  }
  const transverseRadps = add(scale(push.first, unknowns[7]!), scale(push.second, unknowns[8]!));
  return { spinRadps: add(push.along, transverseRadps), transverseRadps };
}

/** C_L in the middle of the samples. */
export function liftOf(unknowns: ArrayLike<number>, push: Push, law: AerodynamicLaw, windMps: Vector): number {
  const airMps: Vector = [unknowns[3]! - windMps[0], unknowns[4]! - windMps[1], unknowns[5]! - windMps[2]];
  return law.liftCoefficient(spinParameterOf(spinOf(unknowns, push).spinRadps, airMps));
}

/** Central differences of one number of the unknowns; only velocity and push matter to forces. */
export function gradientOf(of: (unknowns: Float64Array) => number, unknowns: Float64Array): Float64Array {
  const gradient = new Float64Array(unknownCount);
  const nudged = unknowns.slice();
  for (const index of [3, 4, 5, 7, 8]) {
    const by = 1e-4 * Math.max(1, Math.abs(unknowns[index]!));
    nudged[index] = unknowns[index]! + by;
    const above = of(nudged);
    nudged[index] = unknowns[index]! - by;
    gradient[index] = (above - of(nudged)) / (2 * by);
    nudged[index] = unknowns[index]!;
  }
  return gradient;
}
