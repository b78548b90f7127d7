import { anytimeRadius } from '../statistics/anytime-t.ts';
import { momentsOf } from '../statistics/moments.ts';
import type { Tally } from '../statistics/tally.ts';
import { inchesToM } from '../units/convert.ts';

/** Two inches: what is put down to everything that nobody named. House rule, settable. */
const OWN_BOUND_M = inchesToM(2);
/** What 1 m/s of crosswind does to an 85 mph changeup, a little rounded up: nobody measures the wind over a bullpen. House rule. */
const OUTDOORS_M = inchesToM(1);
/** Fewer say nothing. House rule. */
export const SEAM_FEWEST_THROWS = 5;
const ALPHA = 0.05;

export interface SeamBound {
  /** Two inches unless given. */
  readonly ownM?: number;
  /** How far the device's axis may lie beside the true one on every throw alike, rad. */
  readonly axisBiasRad: number;
  /** Movement that the spin gives these throws: what a turn of the axis turns. */
  readonly movementM: number;
  /** Indoors there is none; outdoors an inch unless it is known how much. */
  readonly wind: 'indoors' | 'outdoors' | { readonly shiftM: number };
}

/**
 * How much movement across the Magnus direction could come from the device and the air on every throw alike, m. Such errors do not
 * shrink with the number of throws, so the verdict is held against them and not against zero.
 */
export function seamBoundM({ ownM = OWN_BOUND_M, axisBiasRad, movementM, wind }: SeamBound): number {
  return ownM + axisBiasRad * movementM + (wind === 'indoors' ? 0 : wind === 'outdoors' ? OUTDOORS_M : wind.shiftM);
}

interface Weighed {
  readonly count: number;
  /** m across the Magnus direction, arm side positive, as the throws were given. */
  readonly meanM: number;
  readonly intervalM: readonly [from: number, to: number];
  readonly boundM: number;
}

export type SeamEffect =
  | { readonly kind: 'too-few'; readonly count: number; readonly boundM: number }
  | ({ readonly kind: 'seen' | 'not-seen' | 'cannot-tell' } & Weighed);

/**
 * Whether the seams push this trial's throws, from the parts of their unexplained movement across the Magnus direction, m, arm side
 * positive. The interval of the mean holds at every look (one sample: n_e = n, ν = n − 1). `seen` only if it lies wholly beyond
 * ±bound, `not-seen` only if wholly within, else `cannot-tell`; `too-few` under five throws, without scatter, or where there
 * is no interval yet. Not a number anywhere in the throws is a bug of the caller.
 */
export function seamEffect(acrossM: Tally, boundM: number, alpha: number = ALPHA): SeamEffect {
  const { count, mean = 0, sd = null } = momentsOf(acrossM) ?? { count: 0 };
  const radiusM = count < SEAM_FEWEST_THROWS || !sd ? Infinity : sd * anytimeRadius({ effectiveN: count, freedom: count - 1, alpha });
  if (radiusM === Infinity) return { kind: 'too-few', count, boundM };
  const intervalM = [mean - radiusM, mean + radiusM] as const;
  return { kind: heldAgainst(intervalM, boundM), count, meanM: mean, intervalM, boundM };
}

function heldAgainst([from, to]: Weighed['intervalM'], boundM: number): 'seen' | 'not-seen' | 'cannot-tell' {
  if (from > boundM || to < -boundM) return 'seen';
  return from >= -boundM && to <= boundM ? 'not-seen' : 'cannot-tell';
}
