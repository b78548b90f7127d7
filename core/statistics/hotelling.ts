import { covariance, type Covariance, type Pair } from './covariance.ts';

export interface HotellingResult {
  readonly tSquared: number;
  readonly f: number;
  readonly freedom: readonly [2, number];
  /** Chance of an F as large when the centres are the same. For one look only: no verdict may rest on it. */
  readonly p: number;
}

/**
 * Two-sample T² of Hotelling: whether two clouds of pairs have the same centre, one covariance for both. Null where
 * nothing can be said: under two pairs of either, under four together, or all on one line.
 *
 * T² = dᵀ[S(1/n₁ + 1/n₂)]⁻¹d, F = (n₁+n₂−3)/(2(n₁+n₂−2))·T² with 2 and n₁+n₂−3 degrees of freedom
 * (Hotelling, Annals of Mathematical Statistics 2:360, 1931); with 2 its upper tail is (1 + 2F/ν)^(−ν/2).
 */
export function hotelling(a: readonly Pair[], b: readonly Pair[]): HotellingResult | null {
  const [one, other] = [covariance(a), covariance(b)];
  if (one === null || other === null) return null;
  const freedom = one.count + other.count - 3;
  if (freedom < 1) return null;
  const distance = squaredDistance(one, other);
  if (distance === null) return null;
  const tSquared = ((one.count * other.count) / (one.count + other.count)) * distance;
  const f = (freedom / (2 * (freedom + 1))) * tSquared;
  return { tSquared, f, freedom: [2, freedom], p: (1 + (2 * f) / freedom) ** (-freedom / 2) };
}

/** Pairs on a line have a determinant that is rounding. */
const FLAT = 1e-12;

/** Mahalanobis distance of the centres, squared, by the pooled covariance. */
function squaredDistance(a: Covariance, b: Covariance): number | null {
  const pooled = (of: (about: Covariance) => number): number => ((a.count - 1) * of(a) + (b.count - 1) * of(b)) / (a.count + b.count - 2);
  const [xx, yy, xy] = [pooled((about) => about.xx), pooled((about) => about.yy), pooled((about) => about.xy)];
  const determinant = xx * yy - xy * xy;
  if (!(determinant > FLAT * xx * yy)) return null;
  const [dx, dy] = [b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]];
  return (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / determinant;
}
