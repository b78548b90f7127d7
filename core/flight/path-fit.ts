import { standardAirDensityKgM3 } from './air.ts';
import { plate } from './ball.ts';
import { stateAtTime, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import { accelerationOn, crossingOf, placeOn, stateOn, type FadingPath } from './fading-path.ts';
import { propagate, type Matrix3 } from './normal-equations.ts';
import { fitRobustly, type RobustFit } from './robust-fit.ts';
import { norm, type Vector } from './vector.ts';

export interface PathSample {
  readonly timeS: number;
  readonly positionM: Vector;
}

export interface PathFitOptions {
  /** The plane of release; the y of the earliest sample when absent. */
  readonly fromYM?: number;
  /** The plane of arrival; the front of the plate when absent. */
  readonly toYM?: number;
  /** Only bends the path by how drag and lift fade; standard air when absent. */
  readonly airDensityKgM3?: number;
  /** Measured spin along the flight, positive with it; none when absent. 500 rpm of it is 0.1 in on the break of a changeup. */
  readonly alongSpinRadps?: number;
}

export interface FittedPath {
  readonly kind: 'path';
  /** t = 0 is the moment at the plane of release; exact at release (place, velocity) and at arrival (place, time). */
  readonly path: ConstantAcceleration;
  /** The clock of the samples at the path's t = 0. */
  readonly startTimeS: number;
  /** The path that touches the flight at its middle: the one for `transverseCoefficients`, whose spin the other would put 2–3 % too high. */
  readonly midFlight: ConstantAcceleration;
  /** The state at the plane of arrival, t from release, with the velocity the fading drag leaves. */
  readonly arrival: PathState;
  /** Root mean square distance of the kept samples from the path, all three axes together. */
  readonly residualRmsM: number;
  /** Indexes of samples that were misreads. */
  readonly rejected: readonly number[];
  readonly standardErrors: { readonly positionM: Vector; readonly velocityMps: Vector; readonly accelerationMps2: Vector };
  /** For x, y and z: covariance of position, velocity and acceleration at t = 0. Measurement only, not the spread of lift laws. */
  readonly covariance: readonly [Matrix3, Matrix3, Matrix3];
}

export interface PathProblem {
  readonly kind: 'problem';
  readonly code: 'too-short' | 'too-noisy' | 'impossible';
  readonly sentence: string;
}

const fewestSamples = 8;
const leastSeenShare = 0.4;
const mostRejectedShare = 0.3;
/** Three inches: a break known no better than this says nothing about a changeup. */
const coarsestBreakM = 0.0762;
const speedRangeMps = [3, 60] as const;

/**
 * The path of a ball through samples of time and place, in any order, m and s. Misreads are found and left out. The samples
 * are fitted with constant acceleration plus the fading of drag and lift that the equations of motion give, then told as
 * the constant acceleration that has the release and the arrival right. A plain parabola through the same samples shifts
 * the induced break of a pitch by 0.2–0.7 in, because its slope at release pays for the forces that fade; this one keeps
 * it within 0.1 in, and pays with an end speed 0.1–0.2 m/s off, which `arrival` has right (measured in tests/core/flight).
 */
export function fitPath(samples: readonly PathSample[], options: PathFitOptions = {}): FittedPath | PathProblem {
  if (samples.length < fewestSamples) {
    return problem('too-short', `The path has ${samples.length} samples; at least ${fewestSamples} are needed.`);
  }
  if (!samples.every(({ timeS, positionM }) => Number.isFinite(timeS) && positionM.every(Number.isFinite))) {
    return problem('impossible', 'The path holds a time or a place that is not a number.');
  }
  const times = samples.map((sample) => sample.timeS);
  const column = (axis: 0 | 1 | 2): number[] => samples.map((sample) => sample.positionM[axis]);
  const fit = fitRobustly(times, [column(0), column(1), column(2)], {
    airDensityKgM3: options.airDensityKgM3 ?? standardAirDensityKgM3,
    alongSpinRadps: options.alongSpinRadps ?? 0,
  });
  if (!fit) return problem('impossible', 'The samples of the path do not spread over time, so no speed can be had from them.');
  const earliest = samples.reduce((first, sample, i) => (fit.kept[i] && sample.timeS < first.timeS ? sample : first), { ...samples[0]!, timeS: Infinity });
  return assemble(fit, samples, options.fromYM ?? earliest.positionM[1], options.toYM ?? plate.frontYM);
}

function assemble(fit: RobustFit, samples: readonly PathSample[], fromYM: number, toYM: number): FittedPath | PathProblem {
  const rejected = fit.kept.flatMap((kept, i) => (kept ? [] : [i]));
  if (rejected.length > mostRejectedShare * samples.length) {
    return problem('too-noisy', `${rejected.length} of ${samples.length} samples of the path lie off any one flight.`);
  }
  const fromS = crossingOf(fit.path, fromYM);
  const toS = crossingOf(fit.path, toYM);
  const speed = norm(stateOn(fit.path, fit.path.middleS).velocityMps);
  if (fromS === null || toS === null || !(toS > fromS) || speed < speedRangeMps[0] || speed > speedRangeMps[1]) {
    return problem('impossible', `The samples do not fly from y = ${fromYM.toFixed(2)} m to y = ${toYM.toFixed(2)} m at a speed a thrown ball has (${speed.toFixed(1)} m/s in the middle).`);
  }
  const seen = seenShare(fit, samples, fromS, toS);
  if (samples.length - rejected.length < fewestSamples || seen < leastSeenShare) {
    return problem('too-short', `The path was seen for ${Math.round(seen * 100)} % of the flight; at least ${leastSeenShare * 100} % are needed.`);
  }
  return describe(fit, rejected, fromS, toS);
}

function describe(fit: RobustFit, rejected: number[], fromS: number, toS: number): FittedPath | PathProblem {
  const flightS = toS - fromS;
  const covariance = [covarianceOf(fit, 0, fromS, flightS), covarianceOf(fit, 1, fromS, flightS), covarianceOf(fit, 2, fromS, flightS)] as const;
  const error = (row: 0 | 1 | 2): Vector => [Math.sqrt(covariance[0][row][row]), Math.sqrt(covariance[1][row][row]), Math.sqrt(covariance[2][row][row])];
  const standardErrors = { positionM: error(0), velocityMps: error(1), accelerationMps2: error(2) };
  const breakErrorM = 0.5 * flightS * flightS * Math.max(standardErrors.accelerationMps2[0], standardErrors.accelerationMps2[2]);
  if (!(breakErrorM <= coarsestBreakM)) {
    return problem('too-noisy', `The samples scatter so much that the break is known only to ±${(breakErrorM * 100).toFixed(0)} cm.`);
  }
  const arrival = stateOn(fit.path, toS);
  return {
    kind: 'path',
    path: anchored(fit.path, fromS, flightS),
    midFlight: touching(fit.path, fromS, flightS),
    startTimeS: fromS,
    arrival: { ...arrival, timeS: flightS },
    residualRmsM: fit.residualRmsM,
    rejected,
    standardErrors,
    covariance,
  };
}

/** The constant acceleration with the path's place and velocity at release and its place at arrival. */
function anchored(path: FadingPath, fromS: number, flightS: number): ConstantAcceleration {
  const { positionM, velocityMps } = stateOn(path, fromS);
  const acceleration = (axis: 0 | 1 | 2): number =>
    (2 * (placeOn(path, axis, fromS + flightS) - positionM[axis] - velocityMps[axis] * flightS)) / flightS ** 2;
  return { positionM, velocityMps, accelerationMps2: [acceleration(0), acceleration(1), acceleration(2)] };
}

/** The constant acceleration with the path's place, velocity and acceleration in the middle of the flight, told from release. */
function touching(path: FadingPath, fromS: number, flightS: number): ConstantAcceleration {
  const { positionM, velocityMps } = stateOn(path, fromS + flightS / 2);
  const accelerationMps2 = accelerationOn(path, fromS + flightS / 2);
  const release = stateAtTime({ positionM, velocityMps, accelerationMps2 }, -flightS / 2);
  return { positionM: release.positionM, velocityMps: release.velocityMps, accelerationMps2 };
}

/** Covariance of place and velocity at release and of the anchored acceleration, as functions of the fit in the middle. */
function covarianceOf(fit: RobustFit, axis: 0 | 1 | 2, fromS: number, flightS: number): Matrix3 {
  const u = fromS - fit.path.middleS;
  const bend = fit.path.fading.bendPerS[axis];
  return propagate(
    fit.unitCovariances[axis],
    [[1, u, u * u * (1 / 2 + (bend * u) / 6)], [0, 1, u * (1 + (bend * u) / 2)], [0, 0, 1 + bend * (u + flightS / 3)]],
    fit.noiseM[axis] ** 2,
  );
}

function seenShare(fit: RobustFit, samples: readonly PathSample[], fromS: number, toS: number): number {
  const times = samples.flatMap((sample, i) => (fit.kept[i] ? [sample.timeS] : []));
  const first = times.reduce((a, b) => Math.min(a, b), Infinity);
  const last = times.reduce((a, b) => Math.max(a, b), -Infinity);
  return (Math.min(last, toS) - Math.max(first, fromS)) / (toS - fromS);
}

function problem(code: PathProblem['code'], sentence: string): PathProblem {
  return { kind: 'problem', code, sentence };
}
