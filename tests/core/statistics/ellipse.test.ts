import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covariance, type Pair } from '../../../core/statistics/covariance.ts';
import { areaInterval95, ellipse, type Ellipse } from '../../../core/statistics/ellipse.ts';
import { relativeGap } from './relative-gap.ts';
import { seededNormal } from './seeded-normals.ts';

const kinds = ['throws', 'next', 'mean'] as const;
const sdOfX = 0.05;
const sdOfY = 0.03;
const correlation = 0.6;
const trueCentre: Pair = [0.3, -0.1];

/** Movement in metres that scatters as an athlete's does: wider to the side, the two measures leaning together. */
function bullpen(normal: () => number, count: number): Pair[] {
  return Array.from({ length: count }, () => {
    const [a, b] = [normal(), normal()];
    return [trueCentre[0] + sdOfX * a, trueCentre[1] + sdOfY * (correlation * a + Math.sqrt(1 - correlation ** 2) * b)] as const;
  });
}

function holds({ centre, semiMajor, semiMinor, angleRad }: Ellipse, [x, y]: Pair): boolean {
  const [dx, dy] = [x - centre[0], y - centre[1]];
  const along = (dx * Math.cos(angleRad) + dy * Math.sin(angleRad)) / semiMajor;
  const across = (dy * Math.cos(angleRad) - dx * Math.sin(angleRad)) / semiMinor;
  return along * along + across * across <= 1;
}

function share(runs: number, happens: () => boolean): number {
  let hits = 0;
  for (let run = 0; run < runs; run += 1) if (happens()) hits += 1;
  return hits / runs;
}

describe('the three ellipses', () => {
  // 20,000 seeded runs: four standard errors of a share of 0.95 are 0.0062, of 0.7 0.013.
  it.each([3, 5, 10])('the next throw after %i falls into its ellipse 95 times in 100', (count) => {
    const normal = seededNormal(100 + count);
    const found = share(20_000, () => holds(ellipse('next', bullpen(normal, count))!, bullpen(normal, 1)[0]!));
    expect(Math.abs(found - 0.95)).toBeLessThan(0.0062);
  });

  it.each([3, 5, 10])('the true centre lies in the ellipse of the mean of %i throws 95 times in 100', (count) => {
    const normal = seededNormal(200 + count);
    const found = share(20_000, () => holds(ellipse('mean', bullpen(normal, count))!, trueCentre));
    expect(Math.abs(found - 0.95)).toBeLessThan(0.0062);
  });

  it('the ellipse of throws, drawn from very many, holds 95 of 100 of them', () => {
    const throws = bullpen(seededNormal(301), 20_000);
    const drawn = ellipse('throws', throws)!;
    expect(Math.abs(throws.filter((pair) => holds(drawn, pair)).length / throws.length - 0.95)).toBeLessThan(0.0062);
  });

  it.each([[5, 0.7], [10, 0.85], [20, 0.9]])('drawn from %i throws it holds only %f of those to come, as its docstring says', (count, expected) => {
    const normal = seededNormal(300 + count);
    const found = share(20_000, () => holds(ellipse('throws', bullpen(normal, count))!, bullpen(normal, 1)[0]!));
    expect(Math.abs(found - expected)).toBeLessThan(0.015);
  });

  it.each([3, 5, 10, 30])('the interval of the area from %i throws holds the true area 95 times in 100', (count) => {
    const normal = seededNormal(400 + count);
    const trueArea = Math.PI * -2 * Math.log(0.05) * sdOfX * sdOfY * Math.sqrt(1 - correlation ** 2);
    const { low, high } = areaInterval95(1, count)!;
    const found = share(20_000, () => {
      const { area } = ellipse('throws', bullpen(normal, count))!;
      return area * low <= trueArea && trueArea <= area * high;
    });
    expect(Math.abs(found - 0.95)).toBeLessThan(0.0062);
  });

  it('two throws, throws on a line and throws on a point have none', () => {
    const line: Pair[] = [0.1, 0.2, 0.35, 0.7].map((x) => [x, 0.3 - 1.7 * x]);
    const flat: Pair[] = [0.1, 0.2, 0.35, 0.7].map((x) => [x, 0.1]);
    const point: Pair[] = Array.from({ length: 6 }, () => [0.1, 0.7]);
    for (const kind of kinds) {
      for (const pairs of [[], bullpen(seededNormal(1), 2), line, flat, point]) expect(ellipse(kind, pairs)).toBeNull();
    }
    expect(areaInterval95(1, 2)).toBeNull();
  });

  it('throws on any line have none, however rounding places them', () => {
    const coordinate = fc.integer({ min: -1000, max: 1000 }).map((millimetres) => millimetres / 1000);
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 3, maxLength: 20 }), coordinate, coordinate, (along, slope, height) => {
        expect(ellipse('throws', along.map((x) => [x, height + slope * x] as const))).toBeNull();
      }),
      { seed: 42 },
    );
  });

  it('an upright one stands at +90° though its throws lean a hair to the other side', () => {
    expect(ellipse('throws', [[-1, 1e-18], [1, -1e-18], [0, 2], [0, -2]])!.angleRad).toBe(Math.PI / 2);
  });

  it('lies along the line the throws lie along, in (−90°, 90°]', () => {
    for (const degrees of [-89, -45, 0, 30, 60, 90]) {
      const angle = (degrees * Math.PI) / 180;
      const cross: Pair[] = [[2, 0], [-2, 0], [0, 1], [0, -1]].map(([along, across]) => [
        along! * Math.cos(angle) - across! * Math.sin(angle),
        along! * Math.sin(angle) + across! * Math.cos(angle),
      ]);
      const drawn = ellipse('throws', cross)!;
      expect(Math.abs(Math.sin(drawn.angleRad - angle))).toBeLessThan(1e-12);
      expect(drawn.angleRad).toBeGreaterThan(-Math.PI / 2);
      expect(drawn.angleRad).toBeLessThanOrEqual(Math.PI / 2);
      expect(drawn.semiMajor / drawn.semiMinor).toBeCloseTo(2, 12);
    }
  });

  // Neither so thin nor so round that rounding decides its width or its direction.
  it('moves with the throws, grows with the unit, turns with the field', () => {
    const readingM = fc.integer({ min: -1000, max: 1000 }).map((millimetres) => millimetres / 1000);
    const pair = fc.tuple(readingM, readingM);
    const numbers = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(pair, { minLength: 4, maxLength: 20 }), numbers, numbers, fc.constantFrom(0.0254, 39.37), (pairs, shift, turn, factor) => {
        const before = ellipse('throws', pairs);
        const roundness = before === null ? 0 : before.semiMinor / before.semiMajor;
        fc.pre(before !== null && roundness > 0.05 && roundness < 0.9);
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        const after = ellipse('throws', pairs.map(([x, y]) => [factor * (cos * x - sin * y) + shift, factor * (sin * x + cos * y)] as const))!;
        expect(relativeGap(after.semiMajor, before.semiMajor * factor)).toBeLessThan(1e-9);
        expect(relativeGap(after.semiMinor, before.semiMinor * factor)).toBeLessThan(1e-9);
        expect(relativeGap(after.area, before.area * factor ** 2)).toBeLessThan(1e-9);
        const [x, y] = before.centre;
        expect(Math.hypot(after.centre[0] - factor * (cos * x - sin * y) - shift, after.centre[1] - factor * (sin * x + cos * y))).toBeLessThan(1e-9);
        expect(Math.abs(Math.sin(after.angleRad - before.angleRad - turn))).toBeLessThan(1e-6);
      }),
      { seed: 41 },
    );
  });

  it('the three share centre and shape: the mean lies in the throws, the throws in the next', () => {
    const throws = bullpen(seededNormal(51), 12);
    const [all, next, mean] = kinds.map((kind) => ellipse(kind, throws)!) as [Ellipse, Ellipse, Ellipse];
    for (const drawn of [next, mean]) {
      expect(drawn.centre).toEqual(covariance(throws)!.centre);
      expect(drawn.angleRad).toBe(all.angleRad);
      expect(drawn.semiMajor / drawn.semiMinor).toBeCloseTo(all.semiMajor / all.semiMinor, 12);
    }
    expect(mean.area).toBeLessThan(all.area);
    expect(all.area).toBeLessThan(next.area);
    // A throw to come varies n times as much as the mean of n, and the mean itself once more.
    expect(next.area / mean.area).toBeCloseTo(12 + 1, 10);
  });
});
