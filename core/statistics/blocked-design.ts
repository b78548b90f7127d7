/** Throws of two trials on one day. */
export interface DayCounts {
  readonly a: number;
  readonly b: number;
}

/** What the counts alone fix of a comparison with the day as a block. Days that lack a trial are not used and not counted. */
export interface BlockedDesign {
  readonly days: number;
  readonly countA: number;
  readonly countB: number;
  /** Σ n_a·n_b/(n_a + n_b) over the days; 0 when no day holds both. */
  readonly effectiveN: number;
  /** Of the residual of "day + trial": throws − days − 1. */
  readonly freedom: number;
  /** The variance of the difference is σ²_a·shareA + σ²_b·shareB; with one σ it is σ²/effectiveN. */
  readonly shareA: number;
  readonly shareB: number;
}

/** Throws of a day that count in the difference of the trials: n_a·n_b/(n_a + n_b), 0 when one is missing. */
export const effectiveOf = ({ a, b }: DayCounts): number => (a === 0 || b === 0 ? 0 : (a * b) / (a + b));

/** The design of any number of days; counts are whole and not negative. */
export function blockedDesign(days: readonly DayCounts[]): BlockedDesign {
  let [used, countA, countB, effectiveN] = [0, 0, 0, 0];
  for (const day of days) {
    const effective = effectiveOf(day);
    if (effective === 0) continue;
    used += 1;
    countA += day.a;
    countB += day.b;
    effectiveN += effective;
  }
  let [shareA, shareB] = [0, 0];
  for (const day of days) {
    const effective = effectiveOf(day);
    if (effective === 0) continue;
    const weight = effective / effectiveN;
    shareA += (weight * weight) / day.a;
    shareB += (weight * weight) / day.b;
  }
  return { days: used, countA, countB, effectiveN, freedom: countA + countB - used - 1, shareA, shareB };
}
