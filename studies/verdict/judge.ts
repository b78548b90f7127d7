import { verdictOf, type Rule } from '../../core/coaching/verdict.ts';
import { anytimeRadius } from '../../core/statistics/anytime-t.ts';
import { blockedDifference, unequalVariance, type BlockedDifference, type ComparedDay } from '../../core/statistics/blocked-difference.ts';
import { tQuantile975 } from '../../core/statistics/t-quantile.ts';

/** That B differs from A, and by how much it looks then. */
export interface Claim {
  readonly kind: 'better' | 'worse';
  readonly difference: number;
  readonly shrunken: number;
}

/** Looks at all throws so far and claims a difference, or does not. */
export type Judge = (days: readonly ComparedDay[]) => Claim | null;

/** The verdict as it ships. */
export function shipped(rule: Rule): Judge {
  return (days) => {
    const verdict = verdictOf(days, rule);
    return verdict.kind === 'better' || verdict.kind === 'worse' ? verdict : null;
  };
}

/** The rule that holds at every look with the pooled variance alone, whatever the two spreads are. */
export const pooledOnly = (alpha: number): Judge => whenBeyond(({ variance }) => variance, anytime(alpha));

/** The same with the larger of the pooled and the unequal-variance estimate always. */
export const largerAlways = (alpha: number): Judge =>
  whenBeyond((found) => Math.max(found.variance, (unequalVariance(found, found.design) ?? 0) * found.design.effectiveN), anytime(alpha));

/** The ordinary 95 % t interval, as if each look were the only one. */
export function ordinaryT(): Judge {
  const quantiles: number[] = [];
  return whenBeyond(({ variance }) => variance, (effectiveN, freedom) => (quantiles[freedom] ??= tQuantile975(freedom)) / Math.sqrt(effectiveN));
}

type Radius = (effectiveN: number, freedom: number) => number;
const anytime = (alpha: number): Radius => (effectiveN, freedom) => anytimeRadius({ effectiveN, freedom, alpha });

function whenBeyond(squaredScale: (found: BlockedDifference) => number, radius: Radius): Judge {
  return (days) => {
    const found = blockedDifference(days);
    if (found === null) return null;
    const { difference, design } = found;
    const beyond = Math.abs(difference) > Math.sqrt(squaredScale(found)) * radius(design.effectiveN, design.freedom);
    return beyond ? { kind: difference < 0 ? 'better' : 'worse', difference, shrunken: difference } : null;
  };
}
