/** A symmetric 3×3 matrix as rows. */
export type Matrix3 = readonly [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];

export interface QuadraticFit {
  /** Per column of `values`: value, slope and second derivative at time zero. */
  readonly coefficients: readonly (readonly [number, number, number])[];
  /** Inverse of the normal matrix: times the variance of one sample it is the covariance of the coefficients. */
  readonly unitCovariance: Matrix3;
}

/**
 * Weighted least squares of c0 + c1·t + ½·c2·t² through each column of values over the same times; choose times near
 * zero on average, which keeps the normal matrix well conditioned. Null where fewer than three times carry weight.
 */
export function fitQuadratics(times: readonly number[], weights: readonly number[], columns: readonly (readonly number[])[]): QuadraticFit | null {
  const sums = [0, 0, 0, 0, 0];
  const rights = columns.map(() => [0, 0, 0]);
  times.forEach((t, i) => {
    const w = weights[i]!;
    const half = 0.5 * t * t;
    sums[0]! += w;
    sums[1]! += w * t;
    sums[2]! += w * half;
    sums[3]! += w * t * half;
    sums[4]! += w * half * half;
    columns.forEach((column, c) => {
      const right = rights[c]!;
      right[0]! += w * column[i]!;
      right[1]! += w * t * column[i]!;
      right[2]! += w * half * column[i]!;
    });
  });
  const [s0, s1, sh, sth, shh] = sums as [number, number, number, number, number];
  const unitCovariance = invert([[s0, s1, sh], [s1, 2 * sh, sth], [sh, sth, shh]]);
  if (!unitCovariance) return null;
  const coefficients = rights.map((right) => times3(unitCovariance, right as [number, number, number]));
  return { coefficients, unitCovariance };
}

function times3(m: Matrix3, v: readonly [number, number, number]): [number, number, number] {
  const row = (i: 0 | 1 | 2): number => m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
  return [row(0), row(1), row(2)];
}

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

/** Covariance of value, slope and second derivative at time `shift` instead of zero, for samples of variance `variance`. */
export function covarianceAt(unit: Matrix3, shift: number, variance: number): Matrix3 {
  const jacobian: Matrix3 = [[1, shift, 0.5 * shift * shift], [0, 1, shift], [0, 0, 1]];
  const entry = (i: 0 | 1 | 2, j: 0 | 1 | 2): number => {
    const right = times3(unit, jacobian[j]);
    return variance * (jacobian[i][0] * right[0] + jacobian[i][1] * right[1] + jacobian[i][2] * right[2]);
  };
  return [
    [entry(0, 0), entry(0, 1), entry(0, 2)],
    [entry(1, 0), entry(1, 1), entry(1, 2)],
    [entry(2, 0), entry(2, 1), entry(2, 2)],
  ];
}
