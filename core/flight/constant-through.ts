import type { ConstantAcceleration } from './constant-acceleration.ts';
import type { Flight } from './fly.ts';
import type { Vector } from './vector.ts';

const places = 41;

/**
 * The constant acceleration that a device tells of a flight: least squares through its places at even times from release to
 * the plate, place, velocity and acceleration at t = 0. Within 0.2 in of the flight, but with a slope at release that pays for
 * the forces that fade. Null for a flight that takes no time.
 */
export function constantThrough(flight: Flight): ConstantAcceleration | null {
  const lastsS = flight.end.timeS;
  if (!(lastsS > 0)) return null;
  const seen = Array.from({ length: places }, (_, i) => flight.positionAt((lastsS * i) / (places - 1)));
  const [x, y, z] = [0, 1, 2].map((axis) => parabola(seen.map((place) => place[axis]!), lastsS)) as [Vector, Vector, Vector];
  return {
    positionM: [x[0], y[0], z[0]],
    velocityMps: [x[1], y[1], z[1]],
    accelerationMps2: [x[2], y[2], z[2]],
  };
}

/** Least squares by polynomials that are orthogonal over even times: place, velocity, acceleration at the first of them. */
function parabola(values: readonly number[], lastsS: number): Vector {
  const u = values.map((_, i) => (2 * i) / (places - 1) - 1);
  const meanSquare = u.reduce((sum, at) => sum + at * at, 0) / places;
  const bowl = u.map((at) => at * at - meanSquare);
  const level = values.reduce((sum, value) => sum + value, 0) / places;
  const slope = along(values, u);
  const bend = along(values, bowl);
  const perS = 2 / lastsS;
  return [level - slope + bend * (1 - meanSquare), (slope - 2 * bend) * perS, 2 * bend * perS * perS];
}

function along(values: readonly number[], shape: readonly number[]): number {
  const sum = values.reduce((total, value, i) => total + value * shape[i]!, 0);
  return sum / shape.reduce((total, at) => total + at * at, 0);
}
