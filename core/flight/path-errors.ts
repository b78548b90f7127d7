import { standardGravityMps2 } from './ball.ts';
import type { FittedPath, PathErrors } from './fitted-path.ts';
import { unknownCount } from './followed-flight.ts';
import { between } from './normal-equations.ts';
import type { Crossing } from './plane-crossing.ts';

type Gradient = ArrayLike<number>;
type Part = readonly [weight: number, gradient: Gradient];

export interface Slopes {
  readonly liftCoefficient: Gradient;
  /** Of the length of the transverse spin. */
  readonly transverseSpin: Gradient;
  readonly seam: boolean;
}

export interface BreaksAndErrors {
  readonly breaks: FittedPath['breaks'];
  readonly errors: PathErrors;
}

/**
 * Every number that is reported, as a function of the unknowns of the fit through the two planes, has the variance gᵀ·C·g
 * with g its gradient and C the covariance of the unknowns.
 */
export function breaksAndErrors(release: Crossing, arrival: Crossing, covariance: Float64Array, slopes: Slopes): BreaksAndErrors {
  const variance = (g: Gradient): number => between(g, covariance, g, unknownCount);
  const error = (...parts: readonly Part[]): number => Math.sqrt(Math.max(0, variance(mixed(parts))));
  const timeS = arrival.timeS - release.timeS;
  const time: readonly Part[] = [[1, arrival.timeSlope], [-1, release.timeSlope]];
  const [vx, vz] = [release.state[3]!, release.state[5]!];
  const moved = (axis: 0 | 2, startMps: number, gravityMps2: number): { valueM: number; slope: Gradient } => ({
    valueM: arrival.state[axis]! - release.state[axis]! - startMps * timeS + 0.5 * gravityMps2 * timeS * timeS,
    slope: mixed([
      [1, arrival.slopes[axis]!], [-1, release.slopes[axis]!], [-timeS, release.slopes[3 + axis]!],
      ...time.map(([sign, slope]): Part => [sign * (gravityMps2 * timeS - startMps), slope]),
    ]),
  });
  const vertical = moved(2, vz, standardGravityMps2);
  const horizontal = moved(0, vx, 0);
  const shared = between(vertical.slope, covariance, horizontal.slope, unknownCount);
  const breaks = {
    verticalM: vertical.valueM,
    horizontalM: horizontal.valueM,
    covariance: [[variance(vertical.slope), shared], [shared, variance(horizontal.slope)]] as const,
  };
  const speedParts = ({ state, slopes: s }: Crossing): Part[] => {
    const speed = Math.hypot(state[3]!, state[4]!, state[5]!);
    return [[state[3]! / speed, s[3]!], [state[4]! / speed, s[4]!], [state[5]! / speed, s[5]!]];
  };
  const approach = (axis: 3 | 5): number => {
    const across = arrival.state[axis]!;
    const ahead = -arrival.state[4]!;
    const square = across * across + ahead * ahead;
    return error([ahead / square, arrival.slopes[axis]!], [across / square, arrival.slopes[4]!]);
  };
  const on = ({ slopes: s }: Crossing, from: number, number: number): number => error([1, s[from + number]!]);
  const seam = (index: number): number => (slopes.seam ? Math.sqrt(covariance[index * unknownCount + index]!) : 0);
  return {
    breaks,
    errors: {
      releaseM: [on(release, 0, 0), 0, on(release, 0, 2)],
      releaseVelocityMps: [on(release, 3, 0), on(release, 3, 1), on(release, 3, 2)],
      releaseSpeedMps: error(...speedParts(release)),
      verticalM: Math.sqrt(breaks.covariance[0][0]),
      horizontalM: Math.sqrt(breaks.covariance[1][1]),
      arrivalM: [on(arrival, 0, 0), 0, on(arrival, 0, 2)],
      arrivalSpeedMps: error(...speedParts(arrival)),
      flightTimeS: error(...time),
      verticalApproachRad: approach(5),
      horizontalApproachRad: approach(3),
      dragCoefficient: Math.sqrt(covariance[6 * unknownCount + 6]!),
      liftCoefficient: error([1, slopes.liftCoefficient]),
      transverseSpinRadps: error([1, slopes.transverseSpin]),
      seamCoefficient: { x: seam(7), z: seam(8) },
    },
  };
}

function mixed(parts: readonly Part[]): Float64Array {
  const sum = new Float64Array(unknownCount);
  for (const [weight, gradient] of parts) {
    for (let i = 0; i < unknownCount; i += 1) sum[i] = sum[i]! + weight * gradient[i]!;
  }
  return sum;
}
