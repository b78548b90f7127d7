import { stateAtY, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import type { FittedPath } from './fitted-path.ts';
import { inducedBreakBetween, transverseCoefficients } from './movement.ts';
import type { ThrownBall } from './spin-explained.ts';
import type { SeenThrow } from './unexplained.ts';
import type { Vector } from './vector.ts';

/** What is known beside the path of a throw that was seen in flight. */
export interface BesideThePath extends Pick<SeenThrow, 'spin' | 'spinErrors'> {
  readonly airDensityKgM3: number;
  readonly windMps?: Vector;
}

/**
 * A throw whose path was fitted to samples, ready for `unexplainedMovement`. Fit it with the same air and wind, and with the measured
 * spin along the flight: without it a gyro ball's break is up to 0.4 in off, and the intervals hold too little.
 */
export function seenInSamples(fit: FittedPath, beside: BesideThePath): SeenThrow {
  const { release, arrival, breaks, dragCoefficient } = fit;
  const [[vertical, both], [, horizontal]] = breaks.covariance;
  return {
    ...spinAndSight(beside),
    thrown: { ...thrownIn(beside), ...startOf(release), plateYM: arrival.positionM[1], dragCoefficient, told: 'flight' },
    observed: { verticalM: breaks.verticalM, horizontalM: breaks.horizontalM, covariance: [vertical, both, horizontal] },
  };
}

/**
 * A throw that the device itself boiled down to constant acceleration. `breakErrorM` is what it tells of one standard error of a
 * break, null where it does not. Null when the path does not go from the release to the plate.
 */
export function seenAsConstant(
  path: ConstantAcceleration,
  planes: { readonly releaseYM: number; readonly plateYM: number },
  breakErrorM: number | null,
  beside: BesideThePath,
): SeenThrow | null {
  const release = stateAtY(path, planes.releaseYM);
  const arrival = stateAtY(path, planes.plateYM);
  const air = transverseCoefficients(path, planes.releaseYM, beside.airDensityKgM3, planes.plateYM);
  if (!release || !arrival || !air || !(air.timeS > 0)) return null;
  const { verticalM, horizontalM } = inducedBreakBetween(release, arrival);
  return {
    ...spinAndSight(beside),
    thrown: { ...thrownIn(beside), ...startOf(release), plateYM: planes.plateYM, dragCoefficient: air.dragCoefficient, told: 'constant-acceleration' },
    observed: { verticalM, horizontalM, covariance: breakErrorM === null ? null : [breakErrorM ** 2, 0, breakErrorM ** 2] },
  };
}

function startOf({ positionM, velocityMps }: PathState): Pick<PathState, 'positionM' | 'velocityMps'> {
  return { positionM, velocityMps };
}

function spinAndSight({ spin, spinErrors }: BesideThePath): Pick<SeenThrow, 'sight' | 'spin' | 'spinErrors'> {
  return { sight: 'full-flight', spin, spinErrors };
}

function thrownIn({ spin, airDensityKgM3, windMps }: BesideThePath): Pick<ThrownBall, 'airDensityKgM3' | 'windMps' | 'rateRpm'> {
  return { airDensityKgM3, ...(windMps && { windMps }), rateRpm: spin?.rateRpm ?? 0 };
}
