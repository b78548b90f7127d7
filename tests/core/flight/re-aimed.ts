import { flyPitch, type Flight, type Launch } from '../../../core/flight/fly.ts';
import { add, cross, dot, norm, scale, type Vector } from '../../../core/flight/vector.ts';

/** The real flight of a launch whose velocity is turned to another direction and its spin by the same turn. */
export function flownTowards(launch: Launch, direction: Vector, airDensityKgM3: number): Flight {
  const from = scale(launch.velocityMps, 1 / norm(launch.velocityMps));
  const to = scale(direction, 1 / norm(direction));
  const axis = cross(from, to);
  const turned = (vector: Vector): Vector => {
    const swung = cross(axis, vector);
    return add(add(vector, swung), scale(cross(axis, swung), 1 / (1 + dot(from, to))));
  };
  return flyPitch({ positionM: launch.positionM, velocityMps: turned(launch.velocityMps), spinRadps: turned(launch.spinRadps) }, { airDensityKgM3 });
}
