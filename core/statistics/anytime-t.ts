/**
 * The t comparison that holds at every look, for a coach who looks after every throw. With g the precision of real
 * effects in SD units and r = g/(g + n_e), the evidence against "no difference" is
 *
 *     E = √r·[(1 + t²/ν)/(1 + r·t²/ν)]^((ν+1)/2)
 *
 * and the chance that it ever reaches 1/α, however often one looks, is at most α when nothing differs.
 *
 * Pérez-Ortiz, Lardy, de Heide & Grünwald, Annals of Statistics 52(4):1410 (2024); Wang & Ramdas, arXiv 2310.03722 (2024);
 * closed form: Lindon, Ham, Tingley & Bojinov, arXiv 2210.08589.
 */

/** Precision (1/variance) of real effects in SD units that the comparison is tuned to. House rule. */
export const PRIOR_PRECISION = 1;

export interface AnytimeDesign {
  /** n0·n1/(n0 + n1) for two trials, their sum over days, n for one; above 0. */
  readonly effectiveN: number;
  /** Degrees of freedom ν of the SD; above 0. */
  readonly freedom: number;
  /** Chance of ever being wrong, between 0 and 1. */
  readonly alpha: number;
  /** g; 1 unless given. */
  readonly priorPrecision?: number;
}

/**
 * Half the width of the interval in units of the pooled SD: the interval is d ± radius·s. The algebraic inverse of
 * E ≥ 1/α. Infinity where there are too few values for any interval.
 */
export function anytimeRadius({ effectiveN, freedom, alpha, priorPrecision = PRIOR_PRECISION }: AnytimeDesign): number {
  const r = priorPrecision / (priorPrecision + effectiveN);
  const logK = Math.log(r * alpha * alpha) / (freedom + 1);
  const k = Math.exp(logK);
  // −expm1 keeps 1 − k exact where ν is large and k is near 1.
  return k <= r ? Infinity : Math.sqrt((freedom * -Math.expm1(logK)) / (k - r) / effectiveN);
}

/** E for t = d·√n_e/s: a real difference when it reaches 1/α. */
export function anytimeEvidence({ t, effectiveN, freedom, priorPrecision = PRIOR_PRECISION }: Omit<AnytimeDesign, 'alpha'> & { readonly t: number }): number {
  const r = priorPrecision / (priorPrecision + effectiveN);
  const ratio = (t * t) / freedom;
  return Math.sqrt(r) * Math.exp(((freedom + 1) / 2) * (Math.log1p(ratio) - Math.log1p(r * ratio)));
}
