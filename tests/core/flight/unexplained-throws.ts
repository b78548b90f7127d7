import type { AerodynamicLaw } from '../../../core/flight/aerodynamics.ts';
import { flyPitch, type Launch } from '../../../core/flight/fly.ts';
import { fitPath } from '../../../core/flight/path-fit.ts';
import type { PlaneCovariance, PlaneVector } from '../../../core/flight/plane-vector.ts';
import { seenInSamples } from '../../../core/flight/seen-throw.ts';
import type { SpinErrors } from '../../../core/flight/spin-errors.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { unexplainedMovement, type UnexplainedMovement } from '../../../core/flight/unexplained.ts';
import { add, cross, dot, norm, scale, type Vector } from '../../../core/flight/vector.ts';
import { degreeRad, mphMps } from './feet-and-miles.ts';
import { seeded } from './noise.ts';

type Random = ReturnType<typeof seeded>;
const airDensityKgM3 = 1.2;

/** A pitch of any kind that only its spin moves, flown by `lawOf`, seen through 80–200 samples with 2–6 mm of noise, its axis and rate measured with errors the device knows. */
export function explainedThrow(seed: number, lawOf: (share: number) => AerodynamicLaw): UnexplainedMovement {
  const random = seeded(seed);
  const launch = pitch(random);
  const samples = seen(launch, lawOf(random.uniform()), random);
  const spinErrors: SpinErrors = { rateRpm: 10 + 40 * random.uniform(), axisRad: (0.5 + 2.5 * random.uniform()) * degreeRad };
  const spinRadps = measured(launch.spinRadps, spinErrors, random);
  const alongSpinRadps = dot(spinRadps, launch.velocityMps) / norm(launch.velocityMps);
  const fit = fitPath(samples, { fromYM: launch.positionM[1], airDensityKgM3, alongSpinRadps });
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  const answer = unexplainedMovement(seenInSamples(fit, { airDensityKgM3, spin: { kind: 'vector', how: 'measured', rateRpm: (norm(spinRadps) * 30) / Math.PI, spinRadps }, spinErrors }));
  if (answer?.kind !== 'unexplained') throw new Error('nothing to be seen');
  return answer;
}

function pitch({ uniform }: Random): Launch {
  const speed = (72 + 28 * uniform()) * mphMps;
  const [up, side] = [(-2 + 3 * uniform()) * degreeRad, (-3 + 6 * uniform()) * degreeRad];
  const velocityMps: Vector = [speed * Math.cos(up) * Math.sin(side), -speed * Math.cos(up) * Math.cos(side), speed * Math.sin(up)];
  const spinRadps = spinAxisFromTilt({
    tiltRad: 2 * Math.PI * uniform(), efficiency: 0.6 + 0.4 * uniform(), gyroSign: uniform() < 0.5 ? 1 : -1, spinRpm: 1400 + 1200 * uniform(), velocityMps,
  });
  return { positionM: [-0.6 + 1.2 * uniform(), 16.4 + 0.6 * uniform(), 1.5 + 0.5 * uniform()], velocityMps, spinRadps };
}

function seen(launch: Launch, law: AerodynamicLaw, { uniform, normal }: Random): { timeS: number; positionM: Vector }[] {
  const flight = flyPitch(launch, { airDensityKgM3, law });
  const count = 80 + Math.floor(121 * uniform());
  const noiseM = 0.002 + 0.004 * uniform();
  return Array.from({ length: count }, (_, i) => {
    const timeS = (flight.end.timeS * i) / (count - 1);
    const [x, y, z] = flight.positionAt(timeS);
    return { timeS, positionM: [x + noiseM * normal(), y + noiseM * normal(), z + noiseM * normal()] as Vector };
  });
}

/** The axis off at random in the two directions across it, and the rate. */
function measured(spinRadps: Vector, { rateRpm, axisRad }: SpinErrors, { normal }: Random): Vector {
  const axis = scale(spinRadps, 1 / norm(spinRadps));
  const aside = cross(axis, [axis[1], axis[2], axis[0]]);
  const [first, second] = [scale(aside, 1 / norm(aside)), cross(axis, scale(aside, 1 / norm(aside)))];
  const off = add(axis, add(scale(first, axisRad * normal()), scale(second, axisRad * normal())));
  return scale(off, (norm(spinRadps) + (rateRpm * normal() * Math.PI) / 30) / norm(off));
}

/** Variance of a movement along a unit direction of the plane. */
export function varianceAlong([vv, vh, hh]: PlaneCovariance, { verticalM, horizontalM }: PlaneVector): number {
  return vv * verticalM ** 2 + 2 * vh * verticalM * horizontalM + hh * horizontalM ** 2;
}

/** The direction across another, clockwise as the pitcher sees it. */
export function acrossTo({ verticalM, horizontalM }: PlaneVector): PlaneVector {
  return { verticalM: horizontalM, horizontalM: -verticalM };
}

/** What share of throws, none of which has anything unexplained, have zero inside their 95 % interval, along and across the Magnus direction. */
export function coverage(answers: readonly UnexplainedMovement[], withModel: boolean): { along: number; across: number } {
  const inside = ({ components, measurement, model }: UnexplainedMovement, across: boolean): boolean => {
    const direction = across ? acrossTo(components!.magnus) : components!.magnus;
    const variance = varianceAlong(measurement!, direction) + (withModel ? varianceAlong(model, direction) : 0);
    return Math.abs(across ? components!.acrossM : components!.alongM) <= 1.959964 * Math.sqrt(variance);
  };
  const share = (across: boolean): number => answers.filter((answer) => inside(answer, across)).length / answers.length;
  return { along: share(false), across: share(true) };
}
