import { cross, dot, type Vector } from './vector.ts';

/**
 * The seam map. The ball has a frame of its own, right-handed, origin at its middle; latitude and longitude are those of the
 * globe: latitude 0 is the equator z = 0, longitude 0 is +x, longitude grows from +x to +y, latitude 90° is +z.
 * - The poles are the two waists, where the leather is narrowest between two stretches of seam, about an inch.
 * - The seam crosses the equator at longitude 0, 90, 180 and 270°: these four are what a ball that spins about its poles
 *   shows the air, four seams a turn.
 * - At longitude 45 and 225° the seam comes nearest to the north pole, latitude 70.53°, and on the equator lies the middle of
 *   a horseshoe; at 135 and 315° the same holds for the south pole. A ball that spins about one of these four shows two seams.
 */

/** a and b over the radius: ⅔ and ⅓ make the waist about 1 in, as on a baseball. */
const wide = 2 / 3;
const narrow = 1 / 3;

/**
 * `count` points of the seam, unit vectors in the frame of the ball, closed if the first is put at the end again:
 * x = a·cos t + b·cos 3t, y = a·sin t − b·sin 3t, z = 2√(ab)·sin 2t, exactly on the sphere because a + b = 1.
 * The shape is quoted by others from the literature; that it lies on the sphere was computed independently.
 */
export function seamCurve(count: number): readonly Vector[] {
  return Array.from({ length: count }, (_, i) => seamAt((2 * Math.PI * i) / count));
}

function seamAt(t: number): Vector {
  return [
    wide * Math.cos(t) + narrow * Math.cos(3 * t),
    wide * Math.sin(t) - narrow * Math.sin(3 * t),
    2 * Math.sqrt(wide * narrow) * Math.sin(2 * t),
  ];
}

/** A place on the seam map: where the spin axis, by the right-hand rule, leaves the ball. */
export interface BallPlace {
  readonly latitudeRad: number;
  readonly longitudeRad: number;
}

/** The unit vector of a place, in the frame of the ball. */
function placeOnBall({ latitudeRad, longitudeRad }: BallPlace): Vector {
  const level = Math.cos(latitudeRad);
  return [level * Math.cos(longitudeRad), level * Math.sin(longitudeRad), Math.sin(latitudeRad)];
}

/**
 * Turns vectors of the ball's frame so that `axis` comes to lie on +z, the middle of a map about the axis. The meridian from the
 * axis towards the south pole of the seam map comes to lie on +x; at the poles themselves longitude 0 takes its place. A
 * rotation: nothing is mirrored, and the ball turns from +x to +y.
 */
export function turnedToAxis(axis: BallPlace): (vector: Vector) => Vector {
  const up = placeOnBall(axis);
  const east: Vector = [-Math.sin(axis.longitudeRad), Math.cos(axis.longitudeRad), 0];
  const south = cross(east, up);
  return (vector) => [dot(south, vector), dot(east, vector), dot(up, vector)];
}

/** The seam about a spin axis: `count` unit vectors, the axis on +z. */
export function seamAround(axis: BallPlace, count: number): readonly Vector[] {
  return seamCurve(count).map(turnedToAxis(axis));
}
