import { chiSquare2Quantile, chiSquareEvenTails, f2Quantile } from './closed-quantiles.ts';
import { covariance, type Covariance, type Pair } from './covariance.ts';

/**
 * - `throws`: would hold 95 % of all throws if centre and covariance were known. Drawn from few throws it holds fewer of
 *   those to come: 70 % at five, 85 % at ten, 90 % at twenty.
 * - `next`: holds the next throw 95 times in 100, however few there are.
 * - `mean`: holds the athlete's true centre 95 times in 100.
 */
export type EllipseKind = 'throws' | 'next' | 'mean';

export interface Ellipse {
  readonly centre: Pair;
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** Of the long axis, from the first measure towards the second, in (−π/2, π/2]. */
  readonly angleRad: number;
  readonly area: number;
}

const SHARE = 0.95;
const LEAST_COUNT = 3;
/** Throws on one line have a covariance whose smaller root is rounding, about 1e-16 of the larger. */
const FLAT = 1e-12;

/**
 * The named 95 % ellipse of finite pairs, for two measures that scatter normally. Lengths are in the unit of the pairs.
 * Null under three pairs, and when all lie on one line or on one point: there is no area then.
 *
 * Johnson & Wichern, Applied Multivariate Statistical Analysis, §5.4 and §5.5: p(n−1)/(n(n−p))·F for the mean,
 * p(n²−1)/(n(n−p))·F for the next, both with F at p and n−p degrees of freedom; here p = 2.
 */
export function ellipse(kind: EllipseKind, pairs: readonly Pair[]): Ellipse | null {
  return ellipseAbout(kind, covariance(pairs));
}

/** The same from centre and covariance. */
export function ellipseAbout(kind: EllipseKind, about: Covariance | null): Ellipse | null {
  if (about === null || about.count < LEAST_COUNT) return null;
  const { larger, smaller } = principalVariances(about);
  if (!(smaller > FLAT * larger)) return null;
  const squaredRadius = squaredRadiusOf(kind, about.count);
  const semiMajor = Math.sqrt(squaredRadius * larger);
  const semiMinor = Math.sqrt(squaredRadius * smaller);
  return { centre: about.centre, semiMajor, semiMinor, angleRad: longAxisRad(about), area: Math.PI * semiMajor * semiMinor };
}

export interface AreaInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % interval of the true area, given the `throws` area of `count` throws: a spread from few throws is very unsure.
 * Null under three. For two normal measures 2(n−1)·√(det S/det Σ) is χ² with 2n−4 degrees of freedom
 * (Anderson, An Introduction to Multivariate Statistical Analysis, §7.5).
 */
export function areaInterval95(area: number, count: number): AreaInterval | null {
  if (count < LEAST_COUNT) return null;
  const scaled = 2 * (count - 1) * area;
  const tails = chiSquareEvenTails(count - 2);
  return { low: scaled / tails.high, high: scaled / tails.low };
}

function squaredRadiusOf(kind: EllipseKind, n: number): number {
  switch (kind) {
    case 'throws':
      return chiSquare2Quantile(SHARE);
    case 'next':
      return ((2 * (n * n - 1)) / (n * (n - 2))) * f2Quantile(SHARE, n - 2);
    case 'mean':
      return ((2 * (n - 1)) / (n * (n - 2))) * f2Quantile(SHARE, n - 2);
  }
}

/** A covariance of two measures, without what it was taken from. */
export type Covaried = Pick<Covariance, 'xx' | 'yy' | 'xy'>;

/** Eigenvalues of a covariance, in its unit; the smaller from the determinant, which loses less than a difference would. */
export function principalVariances({ xx, yy, xy }: Covaried): { readonly larger: number; readonly smaller: number } {
  const larger = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  return { larger, smaller: larger === 0 ? 0 : (xx * yy - xy * xy) / larger };
}

/** Direction of the larger, from the first measure towards the second, in (−π/2, π/2]: atan2 rounds to −π where xy is a hair under 0; the axis it means is +π/2. */
export function longAxisRad({ xx, yy, xy }: Covaried): number {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return angle <= -Math.PI / 2 ? Math.PI / 2 : angle;
}
