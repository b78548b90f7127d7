import { describe, expect, test } from 'vitest';
import { dodge } from '../../web/charts/dodge.ts';
import { linesOf } from '../../web/charts/lines.ts';
import { coveredArea, overlap, placeLabel } from '../../web/charts/place-label.ts';
import { planeScale, reachOf } from '../../web/charts/plane-scale.ts';
import { ticksBetween } from '../../web/charts/ticks.ts';
import { byKey } from '../../web/charts/zone-handles.ts';
import { inchesToM, mToInches } from '../../core/units/convert.ts';

describe('the scale of the separation plane', () => {
  const reach = reachOf([], null);

  test('is the same both ways, so that distances are true', () => {
    const scale = planeScale(reach, 800, 900, 1);
    expect(scale.x(0.1) - scale.x(0)).toBeCloseTo(scale.y(-0.1) - scale.y(0), 9);
  });

  test('down is down, and arm side lies where the hand is', () => {
    expect(planeScale(reach, 800, 900, 1).y(-0.2)).toBeGreaterThan(planeScale(reach, 800, 900, 1).originY);
    expect(planeScale(reach, 800, 900, 1).x(0.2)).toBeGreaterThan(planeScale(reach, 800, 900, 1).originX);
    expect(planeScale(reach, 800, 900, -1).x(0.2)).toBeLessThan(planeScale(reach, 800, 900, -1).originX);
  });

  test('reads a place back into the separation drawn there', () => {
    const scale = planeScale(reach, 640, 1000, -1);
    const back = scale.separationAt(scale.x(0.13), scale.y(-0.31));
    expect(back.armSideM).toBeCloseTo(0.13, 9);
    expect(back.verticalM).toBeCloseTo(-0.31, 9);
  });

  test('does not move for an ordinary throw, and one misread does not shrink the others away', () => {
    expect(reachOf([{ verticalM: inchesToM(-10), armSideM: inchesToM(6) }], null)).toEqual(reach);
    expect(mToInches(reachOf([{ verticalM: inchesToM(-400), armSideM: 0 }], null).downM)).toBeLessThan(40);
  });

  test('holds the whole zone', () => {
    const wide = reachOf([], { kind: 'ellipse', verticalM: inchesToM(-20), armSideM: inchesToM(14), verticalRadiusM: inchesToM(4), armSideRadiusM: inchesToM(4) });
    expect(wide.downM).toBeGreaterThan(inchesToM(24));
    expect(wide.armSideM).toBeGreaterThan(inchesToM(18));
  });
});

describe('a label', () => {
  const bounds = { x: 0, y: 0, width: 400, height: 300 };
  const size = { width: 100, height: 40 };

  test('takes the place wished for while it is free', () => {
    expect(placeLabel(size, { x: 200, y: 150 }, [{ x: 210, y: 130 }], bounds, [])).toEqual({ x: 210, y: 130, ...size });
  });

  test('goes elsewhere rather than cover something', () => {
    const taken = [{ x: 190, y: 100, width: 120, height: 100 }];
    expect(overlap(placeLabel(size, { x: 200, y: 150 }, [{ x: 210, y: 130 }], bounds, taken), taken[0]!)).toBe(0);
  });

  test('stays inside the picture', () => {
    expect(placeLabel(size, { x: 395, y: 295 }, [{ x: 390, y: 290 }], bounds, [])).toEqual({ x: 300, y: 260, ...size });
  });

  test('what is covered is added up by how much it minds, as far as it matters', () => {
    const box = { x: 0, y: 0, width: 10, height: 10 };
    const taken = [{ x: 0, y: 0, width: 5, height: 10 }, { x: 5, y: 0, width: 5, height: 4, minds: 2 }, { x: 0, y: 0, width: 10, height: 10 }];
    expect(coveredArea(box, taken)).toBe(50 + 40 + 100);
    expect(coveredArea(box, taken, 60)).toBe(50 + 40);
  });

  test('on the rail moves just far enough, and the first has the right of way', () => {
    expect(dodge([{ at: 100, size: 40 }, { at: 110, size: 20 }], 0, 300)).toEqual([100, 130]);
    expect(dodge([{ at: 5, size: 40 }], 0, 300)).toEqual([20]);
  });

  test('that is long goes on to another line', () => {
    expect(linesOf('lado del guante', 10)).toEqual(['lado del', 'guante']);
    expect(linesOf('glove side', 10)).toEqual(['glove side']);
  });
});

test('rulings are round in the unit of the viewer, and leave out the fastball itself', () => {
  const ticks = ticksBetween(-inchesToM(12), inchesToM(6), 1600, 150, { perSi: mToInches(1), unit: 'in' });
  expect(ticks.map(({ value }) => value)).toEqual([-10, -5, 5]);
  expect(ticks[0]!.si).toBeCloseTo(-inchesToM(10), 9);
});

describe('the zone by keyboard', () => {
  const zone = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.05, armSideRadiusM: 0.05 } as const;
  const press = (key: string, shiftKey = false) => ({ key, shiftKey });

  test('moves half an inch, two with Shift', () => {
    expect(byKey(press('ArrowDown'), 'move', zone, 1)!.verticalM).toBeCloseTo(-0.2 - inchesToM(0.5), 4);
    expect(byKey(press('ArrowDown', true), 'move', zone, 1)!.verticalM).toBeCloseTo(-0.2 - inchesToM(2), 4);
  });

  test("right is the glove side of a left-hander's plane", () => {
    expect(byKey(press('ArrowRight'), 'move', zone, -1)!.armSideM).toBeLessThan(zone.armSideM);
  });

  test('never shrinks to nothing, and other keys pass by', () => {
    expect(byKey(press('ArrowDown', true), 'taller', { ...zone, verticalRadiusM: 0.02 }, 1)!.verticalRadiusM).toBeCloseTo(inchesToM(0.5), 4);
    expect(byKey(press('Tab'), 'move', zone, 1)).toBeNull();
  });
});
