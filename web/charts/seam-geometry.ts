import { geoAzimuthalEqualArea, geoPath, type GeoProjection } from 'd3';

/** A unit vector of the ball, turned so that the spin axis is +z: spin is then a turning about z by the right-hand rule. */
export type OnBall = readonly [number, number, number];

/** One stretch of the seam on one side of the ball, in degrees as d3-geo takes them: longitude about the axis, latitude from its equator. */
export interface SeamRun {
  readonly side: 'near' | 'far';
  readonly coordinates: readonly (readonly [number, number])[];
}

/** Where the whole ball stops: d3 cannot draw the one point that becomes the rim. */
const ALMOST_ALL_DEG = 179.9;

/**
 * The map of the whole ball seen along its axis: equal areas, the axis in the middle, the other end of the axis all round the
 * rim. Turning the ball about the axis turns the map; with the axis towards the reader it turns anticlockwise.
 */
export function ballMap(radiusPx: number, x: number, y: number): GeoProjection {
  return geoAzimuthalEqualArea().rotate([0, -90]).clipAngle(ALMOST_ALL_DEG).scale(radiusPx / 2).translate([x, y]).precision(0.2);
}

/** How far from the middle of a map of that radius a place lies whose angle from the axis is given. */
export function radiusAt(fromAxisRad: number, radiusPx: number): number {
  return radiusPx * Math.sin(fromAxisRad / 2);
}

/** The path of a line of places on the ball. */
export function pathOn(projection: GeoProjection, coordinates: readonly (readonly [number, number])[]): string {
  return geoPath(projection)({ type: 'LineString', coordinates: coordinates.map(([longitude, latitude]) => [longitude, latitude]) }) ?? '';
}

/** A closed seam cut where it passes the equator of the spin: the near side has the axis in its middle. Runs keep the order of the seam. */
export function seamRuns(seam: readonly OnBall[]): SeamRun[] {
  const start = seam.findIndex((point, index) => isNear(point) !== isNear(before(seam, index)));
  if (seam.length === 0) return [];
  const turned = start <= 0 ? seam : [...seam.slice(start), ...seam.slice(0, start)];
  const runs: { side: SeamRun['side']; coordinates: (readonly [number, number])[] }[] = [];
  turned.forEach((point, index) => {
    const side = isNear(point) ? 'near' : 'far';
    if (runs.at(-1)?.side !== side) {
      const edge = start === -1 ? [] : [toDegrees(onEquator(before(turned, index), point))];
      runs.at(-1)?.coordinates.push(...edge);
      runs.push({ side, coordinates: [...edge] });
    }
    runs.at(-1)!.coordinates.push(toDegrees(point));
  });
  const last = turned.at(-1)!;
  runs.at(-1)!.coordinates.push(toDegrees(start === -1 ? turned[0]! : onEquator(last, turned[0]!)));
  return runs;
}

/** Longitudes about the axis, in radians, at which a closed seam passes the ring that lies so far from the axis. */
export function passes(seam: readonly OnBall[], fromAxisRad: number): number[] {
  const height = Math.cos(fromAxisRad);
  return seam.flatMap((point, index) => {
    const earlier = before(seam, index);
    if (point[2] >= height === earlier[2] >= height) return [];
    const [x, y] = between(earlier, point, (height - earlier[2]) / (point[2] - earlier[2]));
    return [Math.atan2(y, x)];
  });
}

/** How many stitches one seam is drawn with: 108 are sewn. Official Baseball Rules leave the count open; 108 is common practice. */
const STITCHES = 108;
const LEG_ALONG = 0.05;
const LEG_ACROSS = 0.085;

/** The stitches along a closed seam, each a V across it, as lines of longitude and latitude on the side where they lie. */
export function stitches(seam: readonly OnBall[]): SeamRun[] {
  return Array.from({ length: STITCHES }, (_, index) => {
    const place = Math.floor((index * seam.length) / STITCHES);
    const at = seam[place]!;
    const along = unit(minus(seam[(place + 1) % seam.length]!, before(seam, place)));
    const across = crossed(at, along);
    const leg = (way: 1 | -1): readonly [number, number] => toDegrees(unit([0, 1, 2].map((axis) => at[axis]! + LEG_ALONG * along[axis]! + way * LEG_ACROSS * across[axis]!) as unknown as OnBall));
    return { side: isNear(at) ? 'near' : 'far', coordinates: [leg(1), toDegrees(at), leg(-1)] };
  });
}

function isNear([, , z]: OnBall): boolean {
  return z >= 0;
}

function before(seam: readonly OnBall[], index: number): OnBall {
  return seam[(index + seam.length - 1) % seam.length]!;
}

function toDegrees([x, y, z]: OnBall): readonly [number, number] {
  const degrees = 180 / Math.PI;
  return [Math.atan2(y, x) * degrees, Math.asin(Math.max(-1, Math.min(1, z))) * degrees];
}

function onEquator(a: OnBall, b: OnBall): OnBall {
  const [x, y] = between(a, b, a[2] / (a[2] - b[2]));
  return unit([x, y, 0]);
}

function between(a: OnBall, b: OnBall, share: number): OnBall {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
}

function minus(a: OnBall, b: OnBall): OnBall {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function unit([x, y, z]: OnBall): OnBall {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}

function crossed(a: OnBall, b: OnBall): OnBall {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
