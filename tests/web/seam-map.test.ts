import { describe, expect, test } from 'vitest';
import { ballMap, passes, pathOn, radiusAt, seamRuns, stitches, type OnBall } from '../../web/charts/seam-geometry.ts';
import { keyHeight } from '../../web/charts/seam-key.ts';

/** The seam as a curve that lies exactly on the sphere: waist and lobes of a = 2/3, b = 1/3 of the radius. */
const COUNT = 720;
const SEAM: readonly OnBall[] = Array.from({ length: COUNT }, (_, index) => {
  const t = (2 * Math.PI * index) / COUNT;
  return [(2 / 3) * Math.cos(t) + Math.cos(3 * t) / 3, (2 / 3) * Math.sin(t) - Math.sin(3 * t) / 3, 2 * Math.sqrt(2 / 9) * Math.sin(2 * t)];
});
/** The same ball held so that it turns about the line halfway between x and y, through the wide leather. */
const TURNED: readonly OnBall[] = SEAM.map(([x, y, z]) => [z, (x - y) * Math.SQRT1_2, (x + y) * Math.SQRT1_2]);
const CENTRE = [300, 200] as const;
const RADIUS = 100;
const map = ballMap(RADIUS, ...CENTRE);
const EQUATOR = Math.PI / 2;

describe('the map of the ball', () => {
  test('has the spin axis in its middle', () => {
    const [x, y] = map([0, 90])!;
    expect(x).toBeCloseTo(CENTRE[0], 9);
    expect(y).toBeCloseTo(CENTRE[1], 9);
  });

  test('turns anticlockwise with the ball, as one sees it with the axis towards the eye', () => {
    // Of two places a quarter turn apart by the right-hand rule, the second must be reached anticlockwise: screens count y downwards.
    const [ax, ay] = map([0, 0])!;
    const [bx, by] = map([90, 0])!;
    const turned = (ax - CENTRE[0]) * (CENTRE[1] - by) - (CENTRE[1] - ay) * (bx - CENTRE[0]);
    expect(turned).toBeCloseTo(radiusAt(EQUATOR, RADIUS) ** 2, 6);
  });

  test('keeps areas: the nearer half of the ball fills half of the disc', () => {
    expect(radiusAt(EQUATOR, RADIUS) ** 2 / RADIUS ** 2).toBeCloseTo(0.5, 12);
    // A cap within the angle θ of the axis covers (1 − cos θ)/2 of a sphere.
    for (const fromAxisRad of [0.3, 1, 2, 2.9]) expect((radiusAt(fromAxisRad, RADIUS) / RADIUS) ** 2).toBeCloseTo((1 - Math.cos(fromAxisRad)) / 2, 12);
  });

  test('draws a place as far from the middle as the rings say', () => {
    const [x, y] = map([40, -25])!;
    expect(Math.hypot(x - CENTRE[0], y - CENTRE[1])).toBeCloseTo(radiusAt((115 * Math.PI) / 180, RADIUS), 6);
  });

  test('puts the marks of the front ring on the seam: longitude runs from the bottom, anticlockwise', () => {
    const r = radiusAt(1.2, RADIUS);
    for (const longitude of passes(SEAM, 1.2)) {
      const [x, y] = map([(longitude * 180) / Math.PI, 90 - (1.2 * 180) / Math.PI])!;
      expect(x).toBeCloseTo(CENTRE[0] + r * Math.sin(longitude), 6);
      expect(y).toBeCloseTo(CENTRE[1] + r * Math.cos(longitude), 6);
    }
  });
});

describe('the seam on its two sides', () => {
  test('is cut into near and far in turn, and no stretch leaves its side', () => {
    const runs = seamRuns(SEAM);
    expect(runs.map(({ side }) => side)).toEqual(['near', 'far', 'near', 'far']);
    for (const { side, coordinates } of runs) for (const [, latitude] of coordinates) expect(side === 'near' ? latitude : -latitude).toBeGreaterThanOrEqual(-1e-9);
  });

  test('goes on without a hole: each stretch begins where the one before it ends, on the equator', () => {
    const runs = seamRuns(SEAM);
    runs.forEach(({ coordinates }, index) => {
      const [longitude, latitude] = coordinates[0]!;
      const [endLongitude, endLatitude] = runs.at(index - 1)!.coordinates.at(-1)!;
      expect(latitude).toBeCloseTo(0, 9);
      expect(endLatitude).toBeCloseTo(0, 9);
      expect(Math.cos(((longitude - endLongitude) * Math.PI) / 180)).toBeCloseTo(1, 9);
    });
  });

  test('of a ring that never passes the equator is one closed stretch', () => {
    const ring: OnBall[] = Array.from({ length: 60 }, (_, index) => [0.6 * Math.cos(index / 9.55), 0.6 * Math.sin(index / 9.55), 0.8]);
    const runs = seamRuns(ring);
    expect(runs).toHaveLength(1);
    expect(runs[0]!.coordinates.at(-1)).toEqual(runs[0]!.coordinates[0]);
  });

  test('is nothing for a ball without a known seam', () => expect(seamRuns([])).toEqual([]));

  test('is drawn inside the disc, and all of it', () => {
    const drawn = seamRuns(TURNED).map(({ coordinates }) => pathOn(map, coordinates));
    for (const path of drawn) {
      expect(path).not.toContain('NaN');
      for (const [, x, y] of path.matchAll(/[ML]([-\d.]+),([-\d.]+)/g)) expect(Math.hypot(Number(x) - CENTRE[0], Number(y) - CENTRE[1])).toBeLessThanOrEqual(RADIUS + 1e-6);
    }
  });

  test('carries 108 stitches, half of them on either side of a ball held evenly', () => {
    const sewn = stitches(SEAM);
    expect(sewn).toHaveLength(108);
    expect(sewn.filter(({ side }) => side === 'near').length).toBeGreaterThan(50);
    expect(sewn.filter(({ side }) => side === 'near').length).toBeLessThan(58);
  });
});

describe('seams that keep coming by', () => {
  test('are four a turn for a ball thrown across the seams, two for one thrown along them', () => {
    // Closed form: z ∝ sin 2t vanishes four times; x + y = (cos t + sin t)(1 − ⅔·sin 2t) twice, for its second factor never does.
    expect(passes(SEAM, EQUATOR)).toHaveLength(4);
    expect(passes(TURNED, EQUATOR)).toHaveLength(2);
  });

  test('are where the curve says: at the quarter turns, to which sin 2t = 0 belongs', () => {
    const places = passes(SEAM, EQUATOR).map((longitude) => (Math.round((longitude * 180) / Math.PI) + 360) % 360).sort((a, b) => a - b);
    expect(places).toEqual([0, 90, 180, 270]);
  });

  test('come to none beside the axis where no seam runs', () => expect(passes(SEAM, 0.05)).toEqual([]));
});

test('the key of the map grows by the lines that its words take', () => {
  const rows = [{ sign: 'axis', words: 'axis, 1,840 rpm' }, { sign: null, words: 'axis alone: this device does not tell where the seams are' }] as const;
  expect(keyHeight(rows, 2000, 48)).toBeCloseTo((2 * 1.14 + 0.22) * 48, 6);
  expect(keyHeight(rows, 480, 48)).toBeGreaterThan(4 * 1.14 * 48);
});
