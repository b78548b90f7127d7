import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { missOf, nearestOnEllipse } from '../../../core/coaching/target.ts';
import { inchesToM } from '../../../core/units/convert.ts';

const circle = { kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(4), verticalRadiusM: inchesToM(4), armSideRadiusM: inchesToM(4) } as const;

describe('the miss', () => {
  it('counts two inches as one, outside positive and inside negative', () => {
    expect(missOf({ verticalM: inchesToM(-2), armSideM: inchesToM(4) }, circle)).toMatchObject({ onTarget: false });
    expect(missOf({ verticalM: inchesToM(-2), armSideM: inchesToM(4) }, circle).size).toBeCloseTo(1, 9);
    expect(missOf({ verticalM: inchesToM(-8), armSideM: inchesToM(4) }, circle).size).toBeCloseTo(-2, 9);
  });

  it('points from the throw to the nearest edge', () => {
    const miss = missOf({ verticalM: inchesToM(-2), armSideM: inchesToM(4) }, circle);
    expect(miss.toEdgeVerticalM).toBeCloseTo(inchesToM(-2), 9);
    expect(miss.toEdgeArmSideM).toBeCloseTo(0, 9);
  });
});

describe('the nearest point of an ellipse', () => {
  it('lies on it and is no farther than any other point of it', () => {
    const size = fc.double({ min: 0.2, max: 10, noNaN: true });
    const place = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(fc.property(size, size, place, place, (a, b, x, y) => {
      const [qx, qy] = nearestOnEllipse(x, y, a, b);
      expect((qx / a) ** 2 + (qy / b) ** 2).toBeCloseTo(1, 6);
      const found = Math.hypot(qx - x, qy - y);
      for (let turn = 0; turn < 360; turn += 1) {
        const angle = (turn * Math.PI) / 180;
        expect(found).toBeLessThanOrEqual(Math.hypot(a * Math.cos(angle) - x, b * Math.sin(angle) - y) + 1e-7);
      }
    }), { seed: 20, numRuns: 200 });
  });
});
