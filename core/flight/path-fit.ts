import { pathFromRelease } from './aim.ts';
import { defaultLaw, type AerodynamicLaw } from './aerodynamics.ts';
import { standardAirDensityKgM3 } from './air.ts';
import { plate } from './ball.ts';
import { stateAtTime, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import { firstGuess } from './first-guess.ts';
import { fitMotion, mostRejectedShare, type MotionFit, type NoMotionFit } from './fit-motion.ts';
import { gradientOf, liftOf, pushAcross, spinOf, unknownsOf } from './fitted-forces.ts';
import type { FittedPath, PathProblem } from './fitted-path.ts';
import { flyPitch, type Flight } from './fly.ts';
import { unknownCount } from './followed-flight.ts';
import { residualsFor } from './misreads.ts';
import { equationsOfMotion, type Forces } from './motion.ts';
import { breaksAndErrors } from './path-errors.ts';
import { columnsOf, spanOf, type Columns, type PathSample } from './path-samples.ts';
import { crossingOf, type Crossing } from './plane-crossing.ts';
import { variedMotion, type VariedForces } from './varied-motion.ts';
import { norm, type Vector } from './vector.ts';

export interface PathFitOptions {
  /** The plane of release; the y of the earliest sample when absent. */
  readonly fromYM?: number;
  /** The plane of arrival; the front of the plate when absent. */
  readonly toYM?: number;
  /** Standard air when absent. Coefficients and spin depend on it, places and breaks hardly. */
  readonly airDensityKgM3?: number;
  readonly windMps?: Vector;
  /** The law by which lift follows from spin, along the flight and back to the spin reported. */
  readonly law?: AerodynamicLaw;
  /** Measured spin along the flight, positive with it; none when absent. 500 rpm of it is 0.1 in on the break of a changeup. */
  readonly alongSpinRadps?: number;
  /** The whole spin where it was measured: the fit then looks for the push that it leaves over, instead of for the spin. */
  readonly measuredSpinRadps?: Vector;
}

const fewestSamples = 8;
const leastSeenShare = 0.4;
/** Three inches: a break known no better than this says nothing about a changeup. */
const coarsestBreakM = 0.0762;
/** Scatter that would leave the break that coarse with the most samples a device sends. One axis of such scatter makes the others no witnesses. */
const coarsestNoiseM = 0.1;
const speedRangeMps = [3, 60] as const;
/** No path of a thrown ball, and no clock that counts in other units, takes longer. */
const longestS = 10;
/** A drag coefficient beyond these, by more than four standard errors, is no ball in air. */
const dragRange = [0, 1.2] as const;

/**
 * The flight of a ball through samples of time and place, in any order, m and s: the release state, the drag coefficient and
 * the spin across the flight (or, with a measured spin, the push that it leaves over) whose equations of motion come nearest
 * in least squares, misreads left out. Drag and lift follow the speed along the flight; a plain parabola through the same
 * samples is 0.2–0.7 in off in the induced break of a pitch. Never a wrong number: samples that are too few, too scattered, or no ball's, give a problem that says so.
 */
export function fitPath(samples: readonly PathSample[], options: PathFitOptions = {}): FittedPath | PathProblem {
  if (samples.length < fewestSamples) {
    return problem('too-short', `The path has ${samples.length} samples; at least ${fewestSamples} are needed.`);
  }
  if (!samples.every(({ timeS, positionM }) => Number.isFinite(timeS) && positionM.every(Number.isFinite))) {
    return problem('impossible', 'The path holds a time or a place that is not a number.');
  }
  const columns = columnsOf(samples);
  const { firstS, lastS } = spanOf(columns.times);
  if (lastS - firstS > longestS) {
    return problem('impossible', `The times of the path lie more than ${longestS} s apart; send seconds.`);
  }
  const residuals = residualsFor(columns.count);
  const guess = firstGuess(columns, residuals);
  if (guess === null) return problem('impossible', 'The samples of the path do not spread over time, so no speed can be had from them.');
  const speed = norm(guess.velocityMps);
  if (!(speed >= speedRangeMps[0] && speed <= speedRangeMps[1])) {
    return problem('impossible', `The samples move at ${speed.toFixed(1)} m/s in the middle, which no thrown ball does; check units and times.`);
  }
  const forces: VariedForces = {
    airDensityKgM3: options.airDensityKgM3 ?? standardAirDensityKgM3,
    windMps: options.windMps ?? [0, 0, 0],
    law: options.law ?? defaultLaw,
    push: pushAcross(guess.velocityMps, options.alongSpinRadps ?? 0, options.measuredSpinRadps),
  };
  const varied = variedMotion(forces);
  const fit = fitMotion(columns, varied, unknownsOf(guess, forces), residuals);
  if (fit.kind !== 'fit') return noFlight(fit, samples.length);
  const [fromYM, toYM] = [options.fromYM ?? earliestYM(samples, fit.kept), options.toYM ?? plate.frontYM];
  const release = crossingOf(varied, fit.unknowns, fromYM);
  const arrival = crossingOf(varied, fit.unknowns, toYM);
  if (release === null || arrival === null || !(arrival.timeS > release.timeS)) {
    return problem('impossible', `The samples do not fly from y = ${fromYM.toFixed(2)} m to y = ${toYM.toFixed(2)} m.`);
  }
  return doubtful(fit, columns, release, arrival) ?? describe(fit, columns, release, arrival, forces);
}

function noFlight(fit: NoMotionFit, count: number): PathProblem {
  switch (fit.kind) {
    case 'scattered': return problem('too-noisy', `${fit.off} of ${count} samples of the path lie off any one flight; more than ${mostRejectedShare * 100} % cannot be left out.`);
    case 'stray': return problem('impossible', 'No flight of a ball through air comes near the samples of the path; check units, axes and times.');
  }
}

function earliestYM(samples: readonly PathSample[], kept: Uint8Array): number {
  return samples.reduce((first, sample, i) => (kept[i] === 1 && sample.timeS < first.timeS ? sample : first), { timeS: Infinity, positionM: [0, Number.NaN, 0] } as PathSample).positionM[1];
}

/** What is wrong with a fit that came out: seen too little of, or forces that no air has. */
function doubtful(fit: MotionFit, { times, count }: Columns, release: Crossing, arrival: Crossing): PathProblem | null {
  const { firstS, lastS } = spanOf(times, fit.kept);
  const share = (Math.min(lastS, arrival.timeS) - Math.max(firstS, release.timeS)) / (arrival.timeS - release.timeS);
  const seen = fit.kept.reduce((sum, keep) => sum + keep, 0);
  if (seen < fewestSamples || !(share >= leastSeenShare)) {
    return problem('too-short', `The path was seen in ${seen} of ${count} samples and for ${Math.max(0, Math.round(share * 100))} % of the flight; at least ${fewestSamples} samples and ${leastSeenShare * 100} % are needed.`);
  }
  const noiseM = Math.max(...fit.noiseM);
  if (!(noiseM <= coarsestNoiseM)) {
    return problem('too-noisy', `The samples of the path scatter by ±${(noiseM * 100).toFixed(0)} cm about any one flight.`);
  }
  const drag = fit.unknowns[6]!;
  const doubt = 4 * Math.sqrt(fit.covariance[6 * unknownCount + 6]!);
  if (!(drag + doubt >= dragRange[0] && drag - doubt <= dragRange[1])) {
    return problem('impossible', `The ball would have a drag coefficient of ${drag.toFixed(2)}, which no ball has in air; check units and times.`);
  }
  return null;
}

function describe(fit: MotionFit, columns: Columns, release: Crossing, arrival: Crossing, forces: VariedForces): FittedPath | PathProblem {
  const { unknowns, covariance, kept } = fit;
  const { push, law, windMps } = forces;
  const spin = spinOf(unknowns, push);
  const { breaks, errors } = breaksAndErrors(release, arrival, covariance, {
    liftCoefficient: gradientOf((at) => liftOf(at, push, law, windMps), unknowns),
    transverseSpin: push.kind === 'seam' ? new Float64Array(unknowns.length) : gradientOf((at) => norm(spinOf(at, push).transverseRadps), unknowns),
    seam: push.kind === 'seam',
  });
  const coarsestM = Math.max(errors.verticalM, errors.horizontalM);
  if (!(coarsestM <= coarsestBreakM)) {
    return problem('too-noisy', `The samples scatter so much that the break is known only to ±${(coarsestM * 100).toFixed(0)} cm.`);
  }
  const seamCoefficient = push.kind === 'seam' ? { x: unknowns[7]!, z: unknowns[8]! } : null;
  const acting: Forces = {
    airDensityKgM3: forces.airDensityKgM3, windMps,
    law: { dragCoefficient: () => unknowns[6]!, liftCoefficient: law.liftCoefficient },
    ...(seamCoefficient && { seamCoefficient }),
  };
  const start = stateOf(release, 0);
  const end = stateOf(arrival, arrival.timeS - release.timeS);
  let flight: Flight | null = null;
  const at = (timeS: number): PathState => (flight ??= flyPitch({ ...start, spinRadps: spin.spinRadps }, { ...acting, until: { yM: end.positionM[1] } })).stateAt(timeS);
  return {
    kind: 'path', release: start, arrival: end, at,
    startTimeS: columns.middleS + release.timeS,
    path: pathFromRelease(start, end)!, // the arrival comes after the release
    midFlight: touching(at(end.timeS / 2), equationsOfMotion(spin.spinRadps, acting)),
    breaks,
    dragCoefficient: unknowns[6]!,
    liftCoefficient: liftOf(unknowns, push, law, windMps),
    transverseSpinRadps: spin.transverseRadps,
    spinRadps: spin.spinRadps,
    forces: acting,
    seamCoefficient,
    errors,
    noiseM: fit.noiseM,
    residualRmsM: fit.residualRmsM,
    rejected: Array.from(kept.keys()).filter((i) => kept[i] === 0),
  };
}

function stateOf({ state }: Crossing, timeS: number): PathState {
  return { timeS, positionM: [state[0]!, state[1]!, state[2]!], velocityMps: [state[3]!, state[4]!, state[5]!] };
}

function touching(middle: PathState, motion: ReturnType<typeof equationsOfMotion>): ConstantAcceleration {
  const rate = new Float64Array(6);
  motion(middle.timeS, Float64Array.of(...middle.positionM, ...middle.velocityMps), rate);
  const path = { positionM: middle.positionM, velocityMps: middle.velocityMps, accelerationMps2: [rate[3]!, rate[4]!, rate[5]!] as const };
  const { positionM, velocityMps } = stateAtTime(path, -middle.timeS);
  return { ...path, positionM, velocityMps };
}

function problem(code: PathProblem['code'], sentence: string): PathProblem {
  return { kind: 'problem', code, sentence };
}
