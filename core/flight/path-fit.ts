import { standardAirDensityKgM3 } from './air.ts';
import { plate } from './ball.ts';
import { stateAtTime, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import { covarianceAt, type Matrix3 } from './normal-equations.ts';
import { fitRobustly, type CubicPath, type RobustFit } from './robust-fit.ts';
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
 * are fitted with constant acceleration plus the slow fade of drag and lift that the equations of motion give, then told as
 * the constant acceleration that has the release and the arrival right. A plain parabola through the same samples takes
 * 0.4–0.6 in off the induced break of a pitch, because its slope at release pays for the drag that fades; this one keeps
 * it within 0.05 in, and pays with an end speed 0.1 m/s off, which `arrival` has right (measured in tests/core/flight).
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
  const fit = fitRobustly(times, [column(0), column(1), column(2)], options.airDensityKgM3 ?? standardAirDensityKgM3);
  if (!fit) return problem('impossible', 'The samples of the path do not spread over time, so no speed can be had from them.');
  const earliest = samples.reduce((first, sample, i) => (fit.kept[i] && sample.timeS < first.timeS ? sample : first), { ...samples[0]!, timeS: Infinity });
  return assemble(fit, samples, options.fromYM ?? earliest.positionM[1], options.toYM ?? plate.frontYM);
}

function assemble(fit: RobustFit, samples: readonly PathSample[], fromYM: number, toYM: number): FittedPath | PathProblem {
  const rejected = fit.kept.flatMap((kept, i) => (kept ? [] : [i]));
  if (rejected.length > mostRejectedShare * samples.length) {
    return problem('too-noisy', `${rejected.length} of ${samples.length} samples of the path lie off any one flight.`);
  }
  const fromS = crossing(fit.cubic, fromYM);
  const toS = crossing(fit.cubic, toYM);
  const speed = norm(stateOf(fit.cubic, fit.cubic.middleS).velocityMps);
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
  const covarianceOf = (axis: 0 | 1 | 2): Matrix3 => covarianceAt(fit.unitCovariance, fromS - fit.cubic.middleS, fit.noiseM[axis] ** 2);
  const covariance = [covarianceOf(0), covarianceOf(1), covarianceOf(2)] as const;
  const error = (row: 0 | 1 | 2): Vector => [Math.sqrt(covariance[0][row][row]), Math.sqrt(covariance[1][row][row]), Math.sqrt(covariance[2][row][row])];
  const standardErrors = { positionM: error(0), velocityMps: error(1), accelerationMps2: error(2) };
  const breakErrorM = 0.5 * flightS * flightS * Math.max(standardErrors.accelerationMps2[0], standardErrors.accelerationMps2[2]);
  if (!(breakErrorM <= coarsestBreakM)) {
    return problem('too-noisy', `The samples scatter so much that the break is known only to ±${(breakErrorM * 100).toFixed(0)} cm.`);
  }
  const arrival = stateOf(fit.cubic, toS);
  return {
    kind: 'path',
    path: anchored(fit.cubic, fromS, flightS),
    midFlight: touching(fit.cubic, fromS, flightS),
    startTimeS: fromS,
    arrival: { ...arrival, timeS: flightS },
    residualRmsM: fit.residualRmsM,
    rejected,
    standardErrors,
    covariance,
  };
}

/** The constant acceleration with the cubic's place and velocity at release and its place at arrival. */
function anchored(cubic: CubicPath, fromS: number, flightS: number): ConstantAcceleration {
  const { positionM, velocityMps } = stateOf(cubic, fromS);
  const acceleration = (axis: 0 | 1 | 2): number =>
    cubic.axes[axis][2] + cubic.jerkMps3[axis] * (fromS - cubic.middleS + flightS / 3);
  return { positionM, velocityMps, accelerationMps2: [acceleration(0), acceleration(1), acceleration(2)] };
}

/** The constant acceleration with the cubic's place, velocity and acceleration in the middle of the flight, told from release. */
function touching(cubic: CubicPath, fromS: number, flightS: number): ConstantAcceleration {
  const { positionM, velocityMps } = stateOf(cubic, fromS + flightS / 2);
  const acceleration = (axis: 0 | 1 | 2): number => cubic.axes[axis][2] + cubic.jerkMps3[axis] * (fromS + flightS / 2 - cubic.middleS);
  const accelerationMps2: Vector = [acceleration(0), acceleration(1), acceleration(2)];
  const release = stateAtTime({ positionM, velocityMps, accelerationMps2 }, -flightS / 2);
  return { positionM: release.positionM, velocityMps: release.velocityMps, accelerationMps2 };
}

function stateOf({ middleS, axes, jerkMps3 }: CubicPath, timeS: number): PathState {
  const t = timeS - middleS;
  const place = (axis: 0 | 1 | 2): number => {
    const [p, v, a] = axes[axis];
    return p + t * (v + t * (a / 2 + (t * jerkMps3[axis]) / 6));
  };
  const speed = (axis: 0 | 1 | 2): number => axes[axis][1] + t * (axes[axis][2] + (t * jerkMps3[axis]) / 2);
  return { timeS, positionM: [place(0), place(1), place(2)], velocityMps: [speed(0), speed(1), speed(2)] };
}

/** When the cubic passes the plane, by Newton's method from the middle; null where it does not settle. */
function crossing(cubic: CubicPath, yM: number): number | null {
  let timeS = cubic.middleS;
  for (let round = 0; round < 20; round += 1) {
    const { positionM, velocityMps } = stateOf(cubic, timeS);
    const stepS = (yM - positionM[1]) / velocityMps[1];
    timeS += stepS;
    if (Math.abs(stepS) < 1e-13) break;
  }
  return Math.abs(stateOf(cubic, timeS).positionM[1] - yM) < 1e-6 ? timeS : null;
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
