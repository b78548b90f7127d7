import { anytimeRadius, PRIOR_PRECISION } from './anytime-t.ts';
import type { BlockedDesign } from './blocked-design.ts';
import { unequalVariance, type BlockedDifference, type Variances } from './blocked-difference.ts';

/** From this ratio of the two spreads on, the spread has changed. House rule. */
const SPREAD_CHANGED_ABOVE = 1.5;

export interface AnytimeDifference {
  /** Mean of B minus mean of A. */
  readonly difference: number;
  /** Holds at every look with confidence 1 − α. */
  readonly low: number;
  readonly high: number;
  /** Pulled towards 0 by what effects usually are: at the first look that settles it the raw difference exaggerates. */
  readonly shrunken: number;
}

/** The interval of a difference that may be looked at after every throw; null where the throws are too few for one. */
export function anytimeDifference(found: BlockedDifference, alpha: number): AnytimeDifference | null {
  const { design, difference } = found;
  const radius = anytimeRadiusOf(found, design, alpha);
  if (radius === Infinity) return null;
  const shrunken = (difference * design.effectiveN) / (design.effectiveN + PRIOR_PRECISION);
  return { difference, low: difference - radius, high: difference + radius, shrunken };
}

/**
 * Half the width of that interval for throws that scatter so, in this design or in one to come.
 *
 * Where one spread is more than 1.5 times the other, the larger of the pooled and the unequal-variance estimate is used:
 * it keeps false alarms down when the new grip scatters twice as much, and costs one in a hundred of the changes found
 * when it does not. Using it always would cost six; docs/evidence.md holds the run that shows both.
 */
export function anytimeRadiusOf(variances: Variances, design: BlockedDesign, alpha: number): number {
  const unequal = spreadChanged(variances) ? (unequalVariance(variances, design) ?? 0) : 0;
  const scale = Math.sqrt(Math.max(variances.variance, unequal * design.effectiveN));
  return scale * anytimeRadius({ effectiveN: design.effectiveN, freedom: design.freedom, alpha });
}

/** SD of B over SD of A; null where one of them is unknown or both are 0. */
export function spreadRatio({ varianceA, varianceB }: Variances): number | null {
  if (varianceA === null || varianceB === null || varianceA + varianceB === 0) return null;
  return Math.sqrt(varianceB / varianceA);
}

export function spreadChanged(variances: Variances): boolean {
  const ratio = spreadRatio(variances);
  return ratio !== null && (ratio > SPREAD_CHANGED_ABOVE || ratio < 1 / SPREAD_CHANGED_ABOVE);
}
