import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angularDeviationRad, circularMean, circularSdRad, deviationsRad, TOO_SCATTERED_BELOW, wrapRad } from '../../../core/statistics/circular.ts';
import { moments } from '../../../core/statistics/moments.ts';
import { seededNormal } from './seeded-normals.ts';

describe('tilt and other angles', () => {
  it('an angle wrapped is the same direction, in (−180°, 180°]', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (angle) => {
        const wrapped = wrapRad(angle);
        expect(wrapped).toBeGreaterThan(-Math.PI);
        expect(wrapped).toBeLessThanOrEqual(Math.PI);
        expect(Math.abs(Math.sin((wrapped - angle) / 2))).toBeLessThan(1e-13);
      }),
      { seed: 71 },
    );
  });

  it('no angles, and angles that cancel, have no mean and are too scattered to have an axis', () => {
    expect(circularMean([])).toEqual({ count: 0, meanRad: null, resultantLength: 0 });
    const opposite = circularMean([0.3, 0.3 + Math.PI]);
    expect(opposite.meanRad).toBeNull();
    expect(opposite.resultantLength).toBeLessThan(TOO_SCATTERED_BELOW);
  });

  it('turning every axis turns their mean and leaves their agreement', () => {
    const tilts = fc.array(fc.double({ min: -1.2, max: 1.2, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(tilts, fc.double({ min: -20, max: 20, noNaN: true }), (angles, turn) => {
        const before = circularMean(angles);
        const after = circularMean(angles.map((angle) => angle + turn));
        expect(Math.abs(wrapRad(after.meanRad! - before.meanRad! - turn))).toBeLessThan(1e-12);
        expect(Math.abs(after.resultantLength - before.resultantLength)).toBeLessThan(1e-12);
      }),
      { seed: 72 },
    );
  });

  it('axes that agree have no spread', () => {
    const { resultantLength, meanRad } = circularMean([2.5, 2.5 + 2 * Math.PI, 2.5]);
    expect(meanRad).toBeCloseTo(2.5, 12);
    expect(angularDeviationRad(resultantLength)).toBeCloseTo(0, 7);
    expect(circularSdRad(resultantLength)).toBeCloseTo(0, 7);
    expect(circularSdRad(0)).toBe(Infinity);
  });

  it('close axes across the seam of the clock scatter as ordinary numbers do', () => {
    const normal = seededNormal(73);
    const angles = Array.from({ length: 5000 }, () => wrapRad(Math.PI + 0.1 * normal()));
    const { meanRad, resultantLength } = circularMean(angles);
    const sd = moments(deviationsRad(angles, meanRad!))!.sd!;
    expect(sd).toBeCloseTo(0.1, 2);
    expect(Math.abs(circularSdRad(resultantLength) / sd - 1)).toBeLessThan(0.001);
    expect(Math.abs(angularDeviationRad(resultantLength) / sd - 1)).toBeLessThan(0.01);
  });
});
