/** A symmetric 3×3 matrix as rows. */
export type Matrix3 = readonly [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];

type Triple = readonly [number, number, number];

export interface AxisFit {
  /** Value, slope and second derivative at time zero. */
  readonly coefficients: Triple;
  /** Inverse of the normal matrix: times the variance of one sample it is the covariance of the coefficients. */
  readonly unitCovariance: Matrix3;
}

/**
 * Weighted least squares of c0 + c1·t + c2·(½t² + bend·t³/6): a parabola whose third derivative is tied to its second.
 * Choose times near zero on average, which keeps the normal matrix well conditioned. Null where fewer than three times carry weight.
 */
export function fitAxis(times: readonly number[], weights: readonly number[], values: readonly number[], bend: number): AxisFit | null {
  let [s0, s1, s2, sh, sth, shh, r0, r1, rh] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < times.length; i += 1) {
    const w = weights[i]!;
    const t = times[i]!;
    const h = t * t * (0.5 + (bend * t) / 6);
    const weighed = w * values[i]!;
    s0 += w;
    s1 += w * t;
    s2 += w * t * t;
    sh += w * h;
    sth += w * t * h;
    shh += w * h * h;
    r0 += weighed;
    r1 += weighed * t;
    rh += weighed * h;
  }
  const unitCovariance = invert([[s0, s1, sh], [s1, s2, sth], [sh, sth, shh]]);
  return unitCovariance && { coefficients: apply(unitCovariance, [r0, r1, rh]), unitCovariance };
}

function apply(m: Matrix3, v: Triple): Triple {
  const row = (i: 0 | 1 | 2): number => m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
  return [row(0), row(1), row(2)];
}

/** Inverse of a symmetric positive definite matrix; null where it is as good as singular. */
function invert([[a, b, c], [, d, e], [, , f]]: Matrix3): Matrix3 | null {
  const ca = d * f - e * e;
  const cb = c * e - b * f;
  const cc = b * e - c * d;
  const determinant = a * ca + b * cb + c * cc;
  if (!(determinant > 1e-12 * a * d * f)) return null;
  const cd = a * f - c * c;
  const ce = b * c - a * e;
  const cf = a * d - b * b;
  const s = 1 / determinant;
  return [[ca * s, cb * s, cc * s], [cb * s, cd * s, ce * s], [cc * s, ce * s, cf * s]];
}

/** J·C·Jᵀ times `variance`: the covariance of three linear combinations (the rows of `jacobian`) of the coefficients. */
export function propagate(unitCovariance: Matrix3, jacobian: Matrix3, variance: number): Matrix3 {
  const entry = (i: 0 | 1 | 2, j: 0 | 1 | 2): number => {
    const right = apply(unitCovariance, jacobian[j]);
    return variance * (jacobian[i][0] * right[0] + jacobian[i][1] * right[1] + jacobian[i][2] * right[2]);
  };
  const row = (i: 0 | 1 | 2): Triple => [entry(i, 0), entry(i, 1), entry(i, 2)];
  return [row(0), row(1), row(2)];
}
