import { defaultLaw, dragCoefficient, type AerodynamicLaw } from './aerodynamics.ts';

/**
 * Other published fits of lift against the spin parameter. They differ from the default law by 8–12 % where pitches live,
 * which is the model error that any spin recovered from a path, and any movement computed from a spin, carries.
 */

/** Sawicki, Hubbard & Stronge, Am. J. Phys. 71:1152 (2003). */
export function sawickiLiftCoefficient(spinParameter: number): number {
  return spinParameter < 0.1 ? 1.5 * spinParameter : 0.09 + 0.6 * spinParameter;
}

/** R. Cross: 1/(2.32 + 0.4/S); zero without spin. */
export function crossLiftCoefficient(spinParameter: number): number {
  return spinParameter === 0 ? 0 : 1 / (2.32 + 0.4 / spinParameter);
}

/** The published lift laws, the default first. Drag is the default's in all three, so that they differ in lift alone. */
export const publishedLaws: readonly [AerodynamicLaw, AerodynamicLaw, AerodynamicLaw] = [
  defaultLaw,
  { dragCoefficient, liftCoefficient: sawickiLiftCoefficient },
  { dragCoefficient, liftCoefficient: crossLiftCoefficient },
];
