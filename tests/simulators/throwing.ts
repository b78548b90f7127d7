import type { Grip } from '../../core/facts/coach.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import type { Intent } from '../../core/facts/vocabulary.ts';
import { inducedBreakBetween } from '../../core/flight/movement.ts';
import type { SimulatedAthlete } from '../../simulators/athlete.ts';
import { RESTED } from '../../simulators/body.ts';
import { deviceBefore } from '../../simulators/device.ts';
import { randomFrom } from '../../simulators/random.ts';
import { shapeOf } from '../../simulators/repertoire.ts';
import { throwBall, type ThrownBall } from '../../simulators/throw.ts';

export const FULL_MOUND = { distanceM: 18.4404, effort: 'full' } as const;

/** So many rested throws of one kind. */
export function throwMany(athlete: SimulatedAthlete, intent: Intent, grip: Grip | null, count: number, seed = 1): ThrownBall[] {
  const random = randomFrom(seed, `${athlete.profile.id}/${intent}`);
  return Array.from({ length: count }, () => throwBall(athlete, shapeOf(athlete, intent, grip), RESTED, FULL_MOUND, random)!);
}

export function measureMany(athlete: SimulatedAthlete, thrown: readonly ThrownBall[], seed = 1): ThrowBody[] {
  const random = randomFrom(seed, 'measure');
  return thrown.map((ball) => deviceBefore(athlete).measure(ball, random)!);
}

/** Induced break in the athlete's terms, metres. */
export function movementOf(athlete: SimulatedAthlete, { flight }: ThrownBall): { verticalM: number; armSideM: number } {
  const { verticalM, horizontalM } = inducedBreakBetween(flight.start, flight.end);
  return { verticalM, armSideM: athlete.profile.hand === 'right' ? -horizontalM : horizontalM };
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function standardDeviation(values: readonly number[]): number {
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}

export function correlation(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [mean(a), mean(b)];
  return mean(a.map((value, index) => (value - meanA) * (b[index]! - meanB))) / (standardDeviation(a) * standardDeviation(b));
}
