import { ball } from './ball.ts';
import { cross, dot, norm, scale, type Vector } from './vector.ts';

/** How hard the air pulls back and pushes across; two published laws differ by ±8–12 % where pitches live. */
export interface AerodynamicLaw {
  dragCoefficient(totalSpinRpm: number): number;
  liftCoefficient(spinParameter: number): number;
}

const liftNumerator = 1.12;
const liftOffset = 0.583;
const liftSlope = 2.333;

/** C_D of a ball that spins at `totalSpinRpm`, transverse and gyro together (A. M. Nathan, University of Illinois). */
export function dragCoefficient(totalSpinRpm: number): number {
  return 0.3008 + 0.0292 * (totalSpinRpm / 1000);
}

/** C_L at the spin parameter S = R·ω_T/|v| of the *transverse* spin (A. M. Nathan, University of Illinois). */
export function liftCoefficient(spinParameter: number): number {
  return (liftNumerator * spinParameter) / (liftOffset + liftSlope * spinParameter);
}

/** The inverse of `liftCoefficient`: S_T = 0.583·C_L/(1.120 − 2.333·C_L); null where no spin gives so much lift, or less than none. */
export function spinParameterForLift(lift: number): number | null {
  const room = liftNumerator - liftSlope * lift;
  return lift >= 0 && room > 0 ? (liftOffset * lift) / room : null;
}

/** The law the project flies and fits with. Spin must be recovered with the law it was flown with. */
export const defaultLaw: AerodynamicLaw = { dragCoefficient, liftCoefficient };

/** K = ρπR²/(2m), 1/m: the aerodynamic acceleration is K·C·|v|². */
export function aerodynamicConstantPerM(airDensityKgM3: number): number {
  return (airDensityKgM3 * Math.PI * ball.radiusM ** 2) / (2 * ball.massKg);
}

/** S = R·ω_T/|v| with ω_T the part of the spin across the velocity. NaN for a ball at rest. */
export function spinParameterOf(spinRadps: Vector, velocityMps: Vector): number {
  const speed = norm(velocityMps);
  return (ball.radiusM * norm(cross(spinRadps, velocityMps))) / (speed * speed);
}

/** Splits a vector into its part along the velocity (signed length) and its part across it. */
export function splitAlong(vector: Vector, velocityMps: Vector): { along: number; across: Vector } {
  const direction = scale(velocityMps, 1 / norm(velocityMps));
  const along = dot(vector, direction);
  return {
    along,
    across: [vector[0] - along * direction[0], vector[1] - along * direction[1], vector[2] - along * direction[2]],
  };
}
