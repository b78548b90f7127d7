import { ellipse95 } from '../../../web/wall/asked/unexplained-of.ts';
import { inchM } from '../../core/flight/feet-and-miles.ts';
import { curve, line, oval, region, say, type Px } from './svg.ts';

/** Vertical and arm side, m. */
export interface OnPlane {
  readonly verticalM: number;
  readonly armSideM: number;
}

export interface Plane {
  /** The pixel of a place. */
  at(place: OnPlane): Px;
  readonly perInch: number;
}

/** A separation plane, arm side to the right: where its origin lies, and how large an inch is. */
export function planeAbout([x, y]: Px, perInch: number): Plane {
  return { perInch, at: ({ verticalM, armSideM }) => [x + (armSideM / inchM) * perInch, y - (verticalM / inchM) * perInch] };
}

/** Both axes through the origin, with a tick every `every` inches and its number. */
export function axes({ at }: Plane, { left, right, top, bottom, every }: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number; readonly every: number }): string[] {
  const place = (armSideIn: number, upIn: number): Px => at({ verticalM: upIn * inchM, armSideM: armSideIn * inchM });
  const steps = (from: number, to: number): number[] => Array.from({ length: Math.floor((to - from) / every) + 1 }, (_, i) => from + i * every).filter((value) => value !== 0);
  return [
    line(place(left, 0), place(right, 0), 'line'),
    line(place(0, bottom), place(0, top), 'line'),
    ...steps(Math.ceil(left / every) * every, right).map((value) => say([place(value, 0)[0], place(value, 0)[1] - 6], String(Math.abs(value)), 'quiet', 'middle')),
    ...steps(Math.ceil(bottom / every) * every, top).map((value) => say([place(0, value)[0] - 6, place(0, value)[1] + 5], String(Math.abs(value)), 'quiet', 'end')),
  ];
}

/** The 95 % ellipse of a doubt about a place; drawn two pixels wide at least, because one without width is not drawn at all. */
export function doubt(plane: Plane, place: OnPlane, covariance: readonly [number, number, number], kind: string): string {
  const { semiMajorM, semiMinorM, angleRad } = ellipse95(covariance);
  const long = (metres: number): number => (metres / inchM) * plane.perInch;
  return oval(plane.at(place), [long(semiMajorM), Math.max(1, long(semiMinorM))], (-angleRad * 180) / Math.PI, kind);
}

/** The region between two closed lines. */
export function ring(plane: Plane, outer: readonly OnPlane[], inner: readonly OnPlane[], kind: string): string {
  return region([outer, inner].map((points) => points.map((point) => plane.at(point))), kind);
}

export function outline(plane: Plane, points: readonly OnPlane[], kind: string): string {
  return curve(points.map((point) => plane.at(point)), kind, true);
}
