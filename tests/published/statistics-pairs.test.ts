import fQuantile from '@stdlib/stats-base-dists-f-quantile';
import { describe, expect, it } from 'vitest';
import type { Pair } from '../../core/statistics/covariance.ts';
import { hotelling } from '../../core/statistics/hotelling.ts';
import { radialErrors } from '../../core/statistics/radial.ts';

describe('two clouds by the T² of Hotelling', () => {
  // Published: example of HotellingsT2Test in the R package DescTools.
  it('have T² 21, F 9 with 2 and 6 degrees of freedom and p 1/64 in the example', () => {
    const a: Pair[] = [[1, 3], [3, 7], [2, 2]];
    const b: Pair[] = [[4, 6], [6, 8], [6, 8], [5, 10], [5, 10], [4, 6]];
    const found = hotelling(a, b)!;
    expect(found.tSquared).toBeCloseTo(21, 10);
    expect(found.f).toBeCloseTo(9, 10);
    expect(found.freedom).toEqual([2, 6]);
    expect(found.p).toBeCloseTo(1 / 64, 12);
  });

  // Computed independently: @stdlib/stats-base-dists-f-quantile, which must give back the F of this p.
  it('have the p of an independent library', () => {
    const found = hotelling([[0.1, 0.2], [0.4, 0.1], [0.3, 0.5], [0.6, 0.2]], [[0.5, 0.4], [0.9, 0.1], [0.2, 0.8]])!;
    expect(fQuantile(1 - found.p, ...found.freedom) / found.f).toBeCloseTo(1, 8);
  });

  it('say nothing from too few throws and from throws on one line', () => {
    expect(hotelling([[0, 0]], [[1, 1], [2, 0], [0, 3]])).toBeNull();
    expect(hotelling([[0, 0], [1, 1]], [[2, 2], [3, 3], [0, 0]])).toBeNull();
  });
});

describe('radial measures', () => {
  const pairs: Pair[] = [[3, 3], [3, 1], [1, 3], [2, 2]];

  // Published: course notes on motor accuracy; the mean radial error to two places.
  it('have the mean radial error of 3.35 of the course notes', () => {
    expect(radialErrors(pairs, [0, 0])!.meanRadial.toFixed(2)).toBe('3.35');
  });

  // Identity: the mean squared distance from the aim is that from the own centre and that of the centre from the aim.
  it('split into offset and scatter', () => {
    const { centreOffset, bivariateVariable } = radialErrors(pairs, [0, 0])!;
    const squared = pairs.reduce((sum, [x, y]) => sum + x * x + y * y, 0) / pairs.length;
    expect(centreOffset ** 2 + bivariateVariable ** 2).toBeCloseTo(squared, 12);
    expect(radialErrors([], [0, 0])).toBeNull();
  });
});
