import { describe, expect, test } from 'vitest';
import { ballsUpTo } from '../../web/charts/gap-balls.ts';
import { gapScale, stretches, type GapLineData, type GapPoint } from '../../web/charts/gap-scale.ts';

const EVEN: readonly GapPoint[] = Array.from({ length: 21 }, (_, index) => [index * 0.02, 0.2 + 14 * (index * 0.02) ** 2]);
const DATA: GapLineData = {
  generation: 'one', line: EVEN, decisionS: 0.225, decisionWidths: 0.9, plateWidths: 2.44,
  texts: {
    name: 'Gap line', description: '', decision: ['0.9 ball widths', 'at decision'], plate: ['2.4 ball widths', 'at the plate'],
    afterRelease: 'after release', decided: { at: 'decision 175 ms from arrival', brief: '175 ms from arrival', basis: 'at the same time' }, milliseconds: 'ms',
  },
};
const ROOM = { width: 480, height: 900, textPx: 48 };

describe('the gap line', () => {
  test('is one stretch while every moment is known', () => expect(stretches(EVEN)).toEqual([EVEN]));

  test('is never drawn across moments that are missing', () => {
    const holed = EVEN.filter((_, index) => index < 8 || index > 10);
    expect(stretches(holed).map((run) => run.length)).toEqual([8, 10]);
  });

  test('is never drawn across a moment whose gap is not a number', () => {
    const holed = EVEN.map((point, index): GapPoint => (index === 5 ? [point[0], Number.NaN] : point));
    expect(stretches(holed).map((run) => run.length)).toEqual([5, 15]);
    expect(stretches(holed).flat().every(([, widths]) => Number.isFinite(widths))).toBe(true);
  });

  test('without a moment is nothing', () => expect(stretches([])).toEqual([]));

  test('runs to the right with time and up with the gap, inside its picture', () => {
    const { x, y, endS, ballPx } = gapScale(DATA, ROOM, 2);
    expect(endS).toBeCloseTo(0.4, 12);
    expect(x(0)).toBeGreaterThanOrEqual(0);
    expect(x(endS) + ballPx / 2).toBeLessThanOrEqual(ROOM.width);
    expect(y(2)).toBeLessThan(y(1));
    expect(y(DATA.plateWidths)).toBeGreaterThan(ROOM.textPx * 2);
    expect(y(0)).toBeLessThan(ROOM.height);
  });

  test('is ruled in balls: one is as high as it is wide', () => {
    const { y, ballPx } = gapScale(DATA, ROOM, 2);
    expect(y(1) - y(2)).toBeCloseTo(ballPx, 9);
  });

  test('of a throw like the fastball stays low: the picture never reaches less than four balls', () => {
    const alike = gapScale({ ...DATA, line: EVEN.map(([timeS]) => [timeS, 0.2]), decisionWidths: 0.2, plateWidths: 0.2 }, ROOM, 2);
    expect(alike.y(0) - alike.y(0.2)).toBeLessThan((alike.y(0) - ROOM.textPx) / 4 * 0.2 + 1);
  });

  test('holds the largest of what is said, were it larger than the line', () => {
    const { y } = gapScale({ ...DATA, plateWidths: 11 }, ROOM, 2);
    expect(y(11)).toBeGreaterThan(0);
  });
});

describe('a column of balls', () => {
  test('counts the gap: whole balls and what is left of the last', () => {
    const balls = ballsUpTo(3.4);
    expect(balls.slice(0, 3)).toEqual([1, 1, 1]);
    expect(balls[3]).toBeCloseTo(0.4, 9);
  });
  test('of a whole number has no sliver on top', () => expect(ballsUpTo(2)).toEqual([1, 1]));
  test('of nothing is empty', () => expect(ballsUpTo(0)).toEqual([]));
});
