import { seamAround, type BallPlace } from '../../../core/flight/seam-curve.ts';
import { degreeRad } from '../../core/flight/feet-and-miles.ts';
import { cross, curve, dot, say, type Drawing, type Px } from './svg.ts';

const radius = 110;
const maps: readonly (readonly [string, BallPlace])[] = [
  ['four seams a turn', { latitudeRad: 90 * degreeRad, longitudeRad: 0 }],
  ['two seams a turn', { latitudeRad: 0, longitudeRad: 45 * degreeRad }],
  ['axis off the seams', { latitudeRad: 35 * degreeRad, longitudeRad: 100 * degreeRad }],
];

/** Three balls, each unrolled round its axis. */
export function seamMaps(): Drawing {
  return {
    width: 800, height: 320,
    title: 'Seam map: the whole ball on an equal-area map about its spin axis, the axis in the middle, its other end all round the rim; for a ball that shows four seams, two seams, and one in between.',
    parts: [
      ...maps.flatMap(([name, axis], index) => map([140 + index * 260, 135], name, axis)),
      say([400, 306], 'solid: the half round the axis; dashed: the far half; thin circle: the equator of the spin', 'quiet', 'middle'),
    ],
  };
}

function map(middle: Px, name: string, axis: BallPlace): string[] {
  const seam = seamAround(axis, 240);
  return [
    dot(middle, radius, 'line'),
    dot(middle, radius * Math.SQRT1_2, 'line hair'),
    ...halves(seam).map(({ near, points }) => curve(points.map((point) => onMap(middle, point)), near ? 'work thick' : 'work dashed')),
    cross(middle, ''),
    say([middle[0], middle[1] + radius + 26], name, '', 'middle'),
  ];
}

/** Lambert's equal-area map about +z: the angle from the axis becomes R·sin(half of it). */
function onMap([x, y]: Px, [u, v, w]: readonly [number, number, number]): Px {
  const level = Math.hypot(u, v);
  const far = radius * Math.sqrt((1 - w) / 2);
  return level === 0 ? [x, y + far] : [x + (far * u) / level, y - (far * v) / level];
}

/** The closed seam cut where it passes the equator of the spin, or the rim of the map. */
function halves(seam: readonly (readonly [number, number, number])[]): { readonly near: boolean; readonly points: (readonly [number, number, number])[] }[] {
  const runs: { near: boolean; points: (readonly [number, number, number])[] }[] = [];
  [...seam, seam[0]!].forEach((point, index, all) => {
    const near = point[2] >= 0;
    const before = all[index - 1];
    const jumps = before !== undefined && point[2] < -0.9 && before[0] * point[0] + before[1] * point[1] < 0;
    if (runs.at(-1)?.near !== near || jumps) runs.push({ near, points: before && !jumps ? [before] : [] });
    runs.at(-1)!.points.push(point);
  });
  return runs;
}
