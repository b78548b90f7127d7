import { describe, expect, it } from 'vitest';
import { covariance, type Pair } from '../../core/statistics/covariance.ts';
import { ellipse } from '../../core/statistics/ellipse.ts';

// Published: NIST/SEMATECH e-Handbook of Statistical Methods, 6.5.4.1, five observations of three measures and their
// covariance matrix; here each two of the three.
const rows = [[4.0, 2.0, 0.6], [4.2, 2.1, 0.59], [3.9, 2.0, 0.58], [4.3, 2.1, 0.62], [4.1, 2.2, 0.63]] as const;
const means = [4.1, 2.08, 0.604] as const;
const matrix = [[0.025, 0.0075, 0.00175], [0.0075, 0.007, 0.00135], [0.00175, 0.00135, 0.00043]] as const;
const pairsOf = (i: 0 | 1 | 2, j: 0 | 1 | 2): Pair[] => rows.map((row) => [row[i], row[j]]);

describe('covariance of two measures', () => {
  it.each([[0, 1], [0, 2], [1, 2]] as const)('of columns %i and %i is the matrix of NIST', (i, j) => {
    const found = covariance(pairsOf(i, j));
    expect(found?.count).toBe(5);
    expect(found?.centre[0]).toBeCloseTo(means[i], 12);
    expect(found?.centre[1]).toBeCloseTo(means[j], 12);
    expect(found?.xx).toBeCloseTo(matrix[i][i], 12);
    expect(found?.yy).toBeCloseTo(matrix[j][j], 12);
    expect(found?.xy).toBeCloseTo(matrix[i][j], 12);
  });

  // Common practice: area of the 95 % ellipse, π·5.99146·√det S; the six digits of 5.99146 are the tolerance.
  it('gives the ellipse of throws its area π·5.99146·√det S', () => {
    const area = Math.PI * 5.99146 * Math.sqrt(0.025 * 0.007 - 0.0075 ** 2);
    expect(Math.abs(ellipse('throws', pairsOf(0, 1))!.area / area - 1)).toBeLessThan(1e-6);
  });
});
