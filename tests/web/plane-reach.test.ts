import { describe, expect, test } from 'vitest';
import type { PlaneReach } from '../../web/charts/plane-data.ts';
import { overlap } from '../../web/charts/place-label.ts';
import { freePlaceIn } from '../../web/charts/plane-reach.ts';
import { planeScale, reachOf, type Separation } from '../../web/charts/plane-scale.ts';

const WIDTH = 830;
const HEIGHT = 930;
const BOUNDS = { x: 0, y: 0, width: WIDTH, height: HEIGHT };
const SCALE = planeScale(reachOf([], null), WIDTH, HEIGHT, 1);
const NAME = { width: 180, height: 70 };

/** A ring about the place of no lift, as a spinning arm has it. */
function ring(radiusM: number, centre: Separation): Separation[] {
  return Array.from({ length: 64 }, (_, index) => {
    const t = (2 * Math.PI * index) / 64;
    return { verticalM: centre.verticalM + radiusM * Math.cos(t), armSideM: centre.armSideM + radiusM * Math.sin(t) };
  });
}
const NO_LIFT: Separation = { verticalM: -0.39, armSideM: -0.16 };
const REACH: PlaneReach = { outline: ring(0.43, NO_LIFT), hole: ring(0.18, NO_LIFT), named: 'within reach by spin' };
const fromNoLiftM = (x: number, y: number): number => {
  const { verticalM, armSideM } = SCALE.separationAt(x, y);
  return Math.hypot(verticalM - NO_LIFT.verticalM, armSideM - NO_LIFT.armSideM);
};

describe('the name of what spin alone can reach', () => {
  test('stands wholly inside the region: no corner beyond its edge, none in its hole', () => {
    const { x, y, width, height } = freePlaceIn(REACH, NAME, SCALE, BOUNDS, [], 32)!;
    for (const [cornerX, cornerY] of [[x, y], [x + width, y], [x, y + height], [x + width, y + height]] as const) {
      expect(fromNoLiftM(cornerX, cornerY)).toBeLessThan(0.43);
      expect(fromNoLiftM(cornerX, cornerY)).toBeGreaterThan(0.18);
    }
  });

  test('gives way to what is drawn already', () => {
    const first = freePlaceIn(REACH, NAME, SCALE, BOUNDS, [], 32)!;
    const second = freePlaceIn(REACH, NAME, SCALE, BOUNDS, [first], 32)!;
    expect(overlap(first, second)).toBe(0);
  });

  test('is left out where the region has no room for it', () => {
    const small: PlaneReach = { ...REACH, outline: ring(0.03, NO_LIFT), hole: null };
    expect(freePlaceIn(small, NAME, SCALE, BOUNDS, [], 32)).toBeNull();
    expect(freePlaceIn(REACH, NAME, SCALE, BOUNDS, [BOUNDS], 32)).toBeNull();
  });

  test('lies on the other side of a left-hander’s plane', () => {
    const mirrored = planeScale(reachOf([], null), WIDTH, HEIGHT, -1);
    const left = freePlaceIn(REACH, NAME, mirrored, BOUNDS, [], 32)!;
    const { armSideM } = mirrored.separationAt(left.x + left.width / 2, left.y + left.height / 2);
    expect(Math.abs(armSideM - NO_LIFT.armSideM)).toBeLessThan(0.43);
  });
});
