/**
 * Other published fits of lift against the spin parameter. They differ from the default law by 8–12 % where pitches live,
 * which is the model error that any spin recovered from a path carries.
 */

/** Sawicki, Hubbard & Stronge, Am. J. Phys. 71:1152 (2003). */
export function sawickiLiftCoefficient(spinParameter: number): number {
  return spinParameter < 0.1 ? 1.5 * spinParameter : 0.09 + 0.6 * spinParameter;
}

/** R. Cross: 1/(2.32 + 0.4/S); zero without spin. */
export function crossLiftCoefficient(spinParameter: number): number {
  return spinParameter === 0 ? 0 : 1 / (2.32 + 0.4 / spinParameter);
}
