import type { ThrowBody } from '../../core/facts/frames.ts';
import type { Source } from '../../core/facts/fact.ts';
import { pathFromRelease } from '../../core/flight/aim.ts';
import type { Flight, Launch } from '../../core/flight/fly.ts';
import { mirrorPath, mirrorSpin } from '../../core/flight/mirror.ts';
import { norm, type Vector } from '../../core/flight/vector.ts';
import type { Hand } from '../../core/facts/vocabulary.ts';
import { degToRad, radpsToRpm } from '../../core/units/convert.ts';
import { noisy, noisyDirection, written } from '../../simulators/noise.ts';
import type { Random } from '../../simulators/random.ts';
import { WINTER } from './parameters.ts';

const { device: ERRORS } = WINTER;

/** What the device says about itself. It does not tell its errors: the advice does not ask for them, and their intervals cost half of the time. */
export const DEVICE = {
  device: 'winter-tower',
  run: 'winter',
  sight: 'full-flight',
  axis: 'measured',
  units: { distance: 'm', speed: 'm/s', movement: 'm' },
} as const satisfies Omit<Source, 'sequence' | 'time'>;

/** In a right-hander's terms. */
export interface Thrown {
  readonly launch: Launch;
  readonly flight: Flight;
  readonly extensionM: number;
}

/** The frame of a throw: constant acceleration and an axis, each with its error. Null when the ball did not get to the plate. */
export function measured({ launch, flight, extensionM }: Thrown, hand: Hand, random: Random): ThrowBody | null {
  const path = flight.ending === 'plane' ? pathFromRelease(flight.start, flight.end) : null;
  if (path === null) return null;
  const { positionM, velocityMps: [vx, vy, vz], accelerationMps2: [ax, ay, az] } = hand === 'left' ? mirrorPath(path) : path;
  const spinRadps = hand === 'left' ? mirrorSpin(launch.spinRadps) : launch.spinRadps;
  // An error of the break is an error of the acceleration over half the squared time.
  const pushed = (value: number): number => noisy(value, (2 * ERRORS.movementM) / flight.end.timeS ** 2, random);
  const start = triple(positionM);
  return {
    constant: { start, velocity: triple([vx, noisy(vy, ERRORS.speedMps, random), vz]), acceleration: triple([pushed(ax), ay, pushed(az)]), distance: start[1] },
    spin: { rate: written(Math.max(0, noisy(radpsToRpm(norm(spinRadps)), ERRORS.spinRpm, random)), 0), axis: triple(noisyDirection(spinRadps, degToRad(ERRORS.axisDeg), random)) },
    extension: written(noisy(extensionM, ERRORS.extensionM, random), 2),
  };
}

const triple = ([x, y, z]: Vector): [number, number, number] => [written(x, 4), written(y, 4), written(z, 4)];
