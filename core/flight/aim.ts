import { plate, standardGravityMps2 } from './ball.ts';
import { stateAtY, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import { add, cross, dot, norm, scale, type Vector } from './vector.ts';

/** A point of the plane across the front of the plate: towards the catcher's right, and above the ground. */
export interface PlatePlace {
  readonly xM: number;
  readonly zM: number;
}

const closeEnoughM = 1e-10;
const longestSearch = 25;

/**
 * The constant-acceleration path with t = 0 at the release that leaves with the velocity of `release` and is where the ball was at its
 * arrival: same flight time, same plate place, same induced break. In between it stays within a quarter of an inch, across, of the
 * flight whose forces fade. Null unless the arrival comes later.
 */
export function pathFromRelease({ timeS, positionM, velocityMps }: PathState, arrival: Pick<PathState, 'timeS' | 'positionM'>): ConstantAcceleration | null {
  const tookS = arrival.timeS - timeS;
  if (!(tookS > 0)) return null;
  const beyondM = add(arrival.positionM, scale(add(positionM, scale(velocityMps, tookS)), -1));
  return { positionM, velocityMps, accelerationMps2: scale(beyondM, 2 / (tookS * tookS)) };
}

/**
 * The same pitch from the same release, aimed so that it crosses the plane `plateYM` at `place`. Its velocity is turned and the pull of
 * the air (drag and Magnus) with it: an arm that aims elsewhere turns ball, axis and flight together, and drag stays against the
 * flight. Gravity is not turned. Keeping the pull as it was would be 0.6 in off at the plate for each degree; turned, it is 0.03 in over three.
 * Null when the pitch cannot be made to cross there.
 */
export function aimedAt(path: ConstantAcceleration, place: PlatePlace, plateYM: number = plate.frontYM): ConstantAcceleration | null {
  let towards = path.velocityMps;
  for (let round = 0; round < longestSearch; round += 1) {
    const aimed = turnedTo(path, towards);
    const arrival = stateAtY(aimed, plateYM);
    if (arrival === null || !(arrival.timeS > 0)) return null;
    const rightM = place.xM - arrival.positionM[0];
    const upM = place.zM - arrival.positionM[2];
    if (Math.abs(rightM) + Math.abs(upM) < closeEnoughM) return aimed;
    towards = add(aimed.velocityMps, [rightM / arrival.timeS, 0, upM / arrival.timeS]);
  }
  return null;
}

/** Velocity and pull of the air turned by the smallest turn that takes the velocity to a direction. */
function turnedTo({ positionM, velocityMps, accelerationMps2 }: ConstantAcceleration, towards: Vector): ConstantAcceleration {
  const from = scale(velocityMps, 1 / norm(velocityMps));
  const to = scale(towards, 1 / norm(towards));
  const axis = cross(from, to);
  const lean = 1 / (1 + dot(from, to));
  const turned = (vector: Vector): Vector => {
    const swung = cross(axis, vector);
    return add(add(vector, swung), scale(cross(axis, swung), lean)); // Rodrigues' formula between two unit vectors
  };
  const pull = turned([accelerationMps2[0], accelerationMps2[1], accelerationMps2[2] + standardGravityMps2]);
  return { positionM, velocityMps: turned(velocityMps), accelerationMps2: [pull[0], pull[1], pull[2] - standardGravityMps2] };
}
