import { publishedLaws } from './lift-laws.ts';
import { covarianceAlong, middle, minus, size, sumOf, type PlaneCovariance, type PlaneVector } from './plane-vector.ts';
import { nudgedSpins, type SpinErrors } from './spin-errors.ts';
import { spinExplainedBreak, spinlessBreak, type ThrownBall } from './spin-explained.ts';
import type { HowKnown, KnownSpin } from './spin-known.ts';
import { spinAxisFromTilt, tiltFromForce } from './spin.ts';
import type { Vector } from './vector.ts';

export interface UnexplainedMovement {
  readonly kind: 'unexplained';
  readonly observed: PlaneVector;
  /** What the Magnus force of the measured spin accounts for, by the default lift law, in the same convention. */
  readonly spinExplained: PlaneVector;
  /** observed − spin-explained. */
  readonly unexplained: PlaneVector;
  /** Null under three inches of Magnus movement, where its direction says nothing. */
  readonly components: {
    /** Unit vector along which the spin pushes. */
    readonly magnus: PlaneVector;
    /** How far: what a turn of the axis turns. */
    readonly pushM: number;
    /** Along it: a lift law that gives too little shows here as well as a seam does. */
    readonly alongM: number;
    /**
     * Across it, positive clockwise as the pitcher sees it: from 12:00 towards 3:00, a right-hander's arm side; for a
     * left-hander arm side is its negative. No lift law and no rate of spin can show here: the clean evidence of a seam effect.
     */
    readonly acrossM: number;
  } | null;
  /** Direction observed − direction of the Magnus push, clockwise for the pitcher; null where either is under three inches. */
  readonly directionDeviationRad: number | null;
  /** From the break's covariance and the errors of the spin; null where the device tells neither for one of them. */
  readonly measurement: PlaneCovariance | null;
  /** From the spread of the published lift laws, each as likely: stretched along the Magnus direction. */
  readonly model: PlaneCovariance;
}

/** No number can stand here: an instrument that infers the axis from the path has folded the seam's push into the axis, one that sees only spin cannot see it. */
export interface UnexplainedNotVisible {
  readonly kind: 'not-visible';
  readonly reason: 'spin-only' | 'axis-inferred' | 'no-axis';
}

export interface SeenThrow {
  readonly sight: 'full-flight' | 'spin-only';
  /** Null for a device that sent no spin. */
  readonly spin: KnownSpin | null;
  readonly spinErrors: SpinErrors | null;
  readonly thrown: ThrownBall;
  /** Induced break of the path; covariance null where the device does not tell how sure it is. */
  readonly observed: PlaneVector & { readonly covariance: PlaneCovariance | null };
}

/** Three inches: under it a direction of movement is noise. */
const leastMovementM = 0.0762;

/**
 * Observed minus spin-explained movement of a throw seen in flight, with an axis measured by itself; see `spinExplainedBreak` for
 * what is compared. Units m and rad. Null when the spin alone would not bring this ball to the plate.
 */
export function unexplainedMovement(seen: SeenThrow): UnexplainedMovement | UnexplainedNotVisible | null {
  const spins = measuredSpins(seen);
  return Array.isArray(spins) ? heldAgainst(spins, seen) : spins;
}

/** The spin, or both that it can be where the sign of its part along the flight is not told; or why there is none. */
function measuredSpins({ sight, spin, thrown }: SeenThrow): Vector[] | UnexplainedNotVisible {
  const hidden = (reason: UnexplainedNotVisible['reason']): UnexplainedNotVisible => ({ kind: 'not-visible', reason });
  if (sight === 'spin-only') return hidden('spin-only');
  if (spin === null || spin.kind === 'rate' || spin.kind === 'efficiency' || spin.rateRpm === 0) return hidden('no-axis');
  const hows: readonly HowKnown[] = spin.kind === 'across' ? [spin.tiltHow, spin.efficiencyHow] : [spin.how];
  if (hows.includes('inferred')) return hidden('axis-inferred');
  if (spin.kind === 'tilt') return hidden('no-axis');
  if (spin.kind === 'vector') return [spin.spinRadps];
  return ([1, -1] as const).map((gyroSign) => spinAxisFromTilt({ ...spin, gyroSign, spinRpm: spin.rateRpm, velocityMps: thrown.velocityMps }));
}

function heldAgainst(spins: readonly Vector[], { thrown, observed, spinErrors }: SeenThrow): UnexplainedMovement | null {
  const spinless = spinlessBreak(thrown);
  const breaks = spins.map((spin) => spinExplainedBreak(thrown, spin));
  const first = breaks[0];
  const last = breaks.at(-1);
  if (!spinless || !first || !last) return null;
  const spinExplained = middle(first, last);
  const unexplained = minus(observed, spinExplained);
  const push = minus(spinExplained, spinless);
  return {
    kind: 'unexplained',
    observed: { verticalM: observed.verticalM, horizontalM: observed.horizontalM },
    spinExplained,
    unexplained,
    components: componentsOf(unexplained, push),
    directionDeviationRad: deviation(minus(observed, spinless), push),
    measurement: observed.covariance && spinErrors && sumOf([observed.covariance, ...errorsOfSpin(thrown, spins[0]!, spinErrors), covarianceAlong(minus(first, spinExplained))]),
    model: spreadOfLaws(thrown, spins[0]!, first),
  };
}

function componentsOf(unexplained: PlaneVector, push: PlaneVector): UnexplainedMovement['components'] {
  if (!(size(push) >= leastMovementM)) return null;
  const up = push.verticalM / size(push);
  const right = push.horizontalM / size(push);
  return {
    magnus: { verticalM: up, horizontalM: right },
    pushM: size(push),
    alongM: unexplained.verticalM * up + unexplained.horizontalM * right,
    acrossM: unexplained.verticalM * right - unexplained.horizontalM * up,
  };
}

function deviation(observed: PlaneVector, spin: PlaneVector): number | null {
  if (![observed, spin].every((movement) => size(movement) >= leastMovementM)) return null;
  const apart = tiltFromForce(observed.horizontalM, observed.verticalM)! - tiltFromForce(spin.horizontalM, spin.verticalM)!;
  return Math.atan2(Math.sin(apart), Math.cos(apart));
}

/** J·Σ·Jᵀ of the spin, one term for each of its three directions, by central differences on real flights. */
function errorsOfSpin(thrown: ThrownBall, spin: Vector, errors: SpinErrors): PlaneCovariance[] {
  return nudgedSpins(spin, errors).map(({ less, more, errorPerNudge }) => {
    const [low, high] = [spinExplainedBreak(thrown, less), spinExplainedBreak(thrown, more)];
    return low && high ? covarianceAlong(minus(high, low), errorPerNudge / 2) : [0, 0, 0];
  });
}

/** The second moment of the published laws about the default, each as likely: ±1.96 of its root holds any of them. */
function spreadOfLaws(thrown: ThrownBall, spin: Vector, byDefault: PlaneVector): PlaneCovariance {
  return sumOf(publishedLaws.slice(1).map((law) => {
    const other = spinExplainedBreak(thrown, spin, law);
    return other ? covarianceAlong(minus(other, byDefault), 1 / Math.sqrt(publishedLaws.length)) : [0, 0, 0];
  }));
}
