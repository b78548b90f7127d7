import { circularMean, deviationsRad, TOO_SCATTERED_BELOW, wrapRad } from './circular.ts';

/** Two sets of angles as deviations from a direction between their means, where the ordinary rules for few values hold. */
export type TwoAngles =
  | { readonly kind: 'deviations'; readonly a: readonly number[]; readonly b: readonly number[] }
  /** One of them has no axis to speak of. */
  | { readonly kind: 'too-scattered' };

/** Unrolls two sets of angles, rad, for a difference B − A the short way round. Sets without an angle are too scattered. */
export function unrolled(a: readonly number[], b: readonly number[]): TwoAngles {
  const [one, other] = [circularMean(a), circularMean(b)];
  const scattered = Math.min(one.resultantLength, other.resultantLength) < TOO_SCATTERED_BELOW;
  if (scattered || one.meanRad === null || other.meanRad === null) return { kind: 'too-scattered' };
  const between = one.meanRad + wrapRad(other.meanRad - one.meanRad) / 2;
  return { kind: 'deviations', a: deviationsRad(a, between), b: deviationsRad(b, between) };
}
