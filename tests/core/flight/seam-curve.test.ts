import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ball } from '../../../core/flight/ball.ts';
import { seamAround, seamCurve, turnedToAxis, type BallPlace } from '../../../core/flight/seam-curve.ts';
import { add, cross, dot, norm, scale, type Vector } from '../../../core/flight/vector.ts';
import { degreeRad, inchM } from './feet-and-miles.ts';

const place = (latitudeDeg: number, longitudeDeg: number): BallPlace => ({ latitudeRad: latitudeDeg * degreeRad, longitudeRad: longitudeDeg * degreeRad });
const gap = (a: Vector, b: Vector): number => norm(add(a, scale(b, -1)));
const latitudeDeg = ([, , z]: Vector): number => Math.asin(z) / degreeRad;
const longitudeDeg = ([x, y]: Vector): number => Math.atan2(y, x) / degreeRad;

/** Where the seam passes the circle across an axis, as longitudes on the map about that axis. */
function crossings(axis: BallPlace): number[] {
  const seam = seamAround(axis, 3599); // an odd count keeps points off the circle itself
  return seam.flatMap((point, i) => (point[2] * seam[(i + 1) % seam.length]![2] < 0 ? [longitudeDeg(point)] : [])).sort((a, b) => a - b);
}

describe('The seam', () => {
  test('lies on the ball to the last bits, and closes', () => {
    const seam = seamCurve(720);
    for (const point of seam) expect(Math.abs(norm(point) - 1)).toBeLessThan(1e-15 * 4);
    const lengths = seam.map((point, i) => gap(point, seam[(i + 1) % seam.length]!));
    expect(Math.max(...lengths)).toBeLessThan(0.02);
    expect(Math.min(...lengths)).toBeGreaterThan(0.005);
  });

  test('splits the leather in two equal halves: a quarter turn about the poles with the poles exchanged is the same seam', () => {
    const seam = seamCurve(720);
    for (const [x, y, z] of seam) expect(Math.min(...seam.map((point) => gap(point, [-y, x, -z])))).toBeLessThan(1e-12);
  });

  test('leaves a waist of about an inch at the poles of the map (quoted by others)', () => {
    const nearest = seamCurve(720).filter(([, , z]) => z > 0).reduce((best, point) => (point[2] > best[2] ? point : best));
    expect(latitudeDeg(nearest)).toBeCloseTo(70.5288, 4);
    expect(longitudeDeg(nearest) % 180).toBeCloseTo(45, 9);
    const across = 2 * Math.hypot(nearest[0], nearest[1]) * (ball.radiusM / inchM);
    expect(across).toBeGreaterThan(0.9);
    expect(across).toBeLessThan(1.05);
  });

  test('crosses the equator of the map at 0, 90, 180 and 270°', () => {
    expect(latitudeDeg(seamCurve(4)[0]!)).toBe(0);
    [[1, 0], [0, 1], [-1, 0], [0, -1]].forEach(([x, y], i) => expect(gap(seamCurve(4)[i]!, [x!, y!, 0])).toBeLessThan(1e-15 * 4));
  });
});

describe('The map about a spin axis', () => {
  test('has the axis in its middle and is turned, not mirrored', () => {
    const angle = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(fc.property(angle, angle, fc.tuple(angle, angle, angle), fc.tuple(angle, angle, angle), (latitude, longitude, a, b) => {
      const axis = { latitudeRad: (latitude * Math.PI) / 2, longitudeRad: longitude * Math.PI };
      const turn = turnedToAxis(axis);
      const level = Math.cos(axis.latitudeRad);
      expect(gap(turn([level * Math.cos(axis.longitudeRad), level * Math.sin(axis.longitudeRad), Math.sin(axis.latitudeRad)]), [0, 0, 1])).toBeLessThan(1e-12);
      expect(dot(turn(a), turn(b))).toBeCloseTo(dot(a, b), 12);
      expect(gap(turn(cross(a, b)), cross(turn(a), turn(b)))).toBeLessThan(1e-12);
    }), { seed: 20260304, numRuns: 300 });
  });

  test('about the north pole of the seam map is the seam map itself', () => {
    const turned = seamAround(place(90, 0), 100);
    seamCurve(100).forEach((point, i) => expect(gap(point, turned[i]!)).toBeLessThan(1e-15 * 4));
  });

  test('puts the meridian from the axis to the south pole on +x', () => {
    const turn = turnedToAxis(place(30, 50));
    const further = turn([Math.cos(20 * degreeRad) * Math.cos(50 * degreeRad), Math.cos(20 * degreeRad) * Math.sin(50 * degreeRad), Math.sin(20 * degreeRad)]);
    expect(gap(further, [Math.sin(10 * degreeRad), 0, Math.cos(10 * degreeRad)])).toBeLessThan(1e-12);
  });

  test('a ball that spins about its waists shows four seams a turn, evenly', () => {
    const seen = crossings(place(90, 0));
    expect(seen).toHaveLength(4);
    seen.slice(1).forEach((at, i) => expect(Math.abs(at - seen[i]! - 90)).toBeLessThan(0.5));
  });

  test('a ball that spins about the middle of a horseshoe, or about its other end, shows two seams a turn, close together', () => {
    for (const longitude of [45, 135, -45, -135]) {
      const seen = crossings(place(0, longitude));
      expect(seen).toHaveLength(2);
      const apart = Math.abs(seen[1]! - seen[0]!);
      expect(Math.min(apart, 360 - apart)).toBeLessThan(45);
    }
  });
});
