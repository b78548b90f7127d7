import { stateAtTime, type ConstantAcceleration } from './constant-acceleration.ts';
import type { Flight } from './fly.ts';
import { parabolaThrough } from './parabola.ts';
import { columnsOf } from './path-samples.ts';

const places = 41;
const alike = new Float64Array(places).fill(1);

/**
 * The constant acceleration that a device tells of a flight: least squares through its places at even times from release to
 * the plate, place, velocity and acceleration at t = 0. Within 0.2 in of the flight, but with a slope at release that pays for
 * the forces that fade. Null for a flight that takes no time.
 */
export function constantThrough(flight: Flight): ConstantAcceleration | null {
  const seen = columnsOf(Array.from({ length: places }, (_, i) => flight.stateAt((flight.end.timeS * i) / (places - 1))));
  const path = parabolaThrough(seen, alike);
  if (path === null) return null;
  const { positionM, velocityMps } = stateAtTime(path, -seen.middleS);
  return { ...path, positionM, velocityMps };
}
