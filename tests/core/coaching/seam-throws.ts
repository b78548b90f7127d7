import { standardAirDensityKgM3 as airDensityKgM3 } from '../../../core/flight/air.ts';
import { flyPitch, type Launch } from '../../../core/flight/fly.ts';
import { fitPath } from '../../../core/flight/path-fit.ts';
import { seenInSamples } from '../../../core/flight/seen-throw.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { unexplainedMovement } from '../../../core/flight/unexplained.ts';
import { add, cross, dot, norm, scale, type Vector } from '../../../core/flight/vector.ts';
import { degreeRad, mphMps } from '../flight/feet-and-miles.ts';
import { seeded } from '../flight/noise.ts';

/** What acts on every throw of a trial alike, beside the spin. */
export interface Steady {
  /** Push of the seams across the Magnus direction, arm side +. */
  readonly seam: number;
  /** How far the device's axis lies beside the true one, turned about the flight so that the error across is largest. */
  readonly axisBiasRad: number;
  /** Wind across the flight, towards +x. */
  readonly windMps: number;
}

type Random = ReturnType<typeof seeded>;
const samples = 100;
const sampleNoiseM = 0.004;
/** From throw to throw, as a share; the same ball can behave in more than one way. Ours, for want of a published number. */
const seamScatter = 1 / 3;
const axisNoiseRad = 1.5 * degreeRad;

/**
 * One right-hander's changeups over a trial, as a device that sees the flight and measures the axis would tell them: flown, sampled
 * with noise, fitted, and the part of the unexplained movement across the Magnus direction, m.
 */
export function acrossOfTrial(seed: number, throws: number, steady: Steady, fixedTiltRad?: number): number[] {
  const random = seeded(seed);
  const tiltRad = fixedTiltRad ?? (20 + 60 * random.uniform()) * degreeRad;
  return Array.from({ length: throws }, () => acrossOf(changeupOf(tiltRad, random), steady, tiltRad, random));
}

function changeupOf(meanTiltRad: number, { normal }: Random): Launch {
  const speed = (85 + normal()) * mphMps;
  const [up, side] = [(-0.6 + 0.7 * normal()) * degreeRad, (1.2 + 0.7 * normal()) * degreeRad];
  const velocityMps: Vector = [speed * Math.cos(up) * Math.sin(side), -speed * Math.cos(up) * Math.cos(side), speed * Math.sin(up)];
  const efficiency = Math.min(1, 0.95 + 0.02 * normal());
  const spinRadps = spinAxisFromTilt({ tiltRad: meanTiltRad + 5 * degreeRad * normal(), efficiency, spinRpm: 1700 + 60 * normal(), velocityMps });
  return { positionM: [-0.5 + 0.03 * normal(), 16.8 + 0.05 * normal(), 1.8 + 0.03 * normal()], velocityMps, spinRadps };
}

function acrossOf(launch: Launch, { seam: meanSeam, axisBiasRad, windMps }: Steady, tiltRad: number, random: Random): number {
  const seam = meanSeam * (1 + seamScatter * random.normal());
  const forces = { windMps: [windMps, 0, 0] as Vector, seamCoefficient: { x: -seam * Math.cos(tiltRad), z: -seam * Math.sin(tiltRad) } };
  const flight = flyPitch(launch, { airDensityKgM3, ...forces });
  const jitter = (value: number): number => value + sampleNoiseM * random.normal();
  const seen = Array.from({ length: samples }, (_, i) => {
    const timeS = (flight.end.timeS * i) / (samples - 1);
    const [x, y, z] = flight.positionAt(timeS);
    return { timeS, positionM: [jitter(x), jitter(y), jitter(z)] as Vector };
  });
  const spinRadps = measured(launch, axisBiasRad, random);
  const alongSpinRadps = dot(spinRadps, launch.velocityMps) / norm(launch.velocityMps);
  const fit = fitPath(seen, { fromYM: launch.positionM[1], airDensityKgM3, alongSpinRadps });
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  const answer = unexplainedMovement(seenInSamples(fit, { airDensityKgM3, spin: { kind: 'vector', how: 'measured', rateRpm: (norm(spinRadps) * 30) / Math.PI, spinRadps }, spinErrors: { rateRpm: 20, axisRad: axisNoiseRad } }));
  if (answer?.kind !== 'unexplained' || !answer.components) throw new Error('the changeup shows no movement across its spin');
  return answer.components.acrossM;
}

/** The axis as the device gives it: turned about the flight by its bias, and off at random in every direction. */
function measured({ spinRadps, velocityMps }: Launch, axisBiasRad: number, { normal }: Random): Vector {
  const forward = scale(velocityMps, 1 / norm(velocityMps));
  const turned = add(scale(spinRadps, Math.cos(axisBiasRad)), scale(cross(forward, spinRadps), Math.sin(axisBiasRad)));
  const off = scale([normal(), normal(), normal()], axisNoiseRad * norm(spinRadps));
  const noisy = add(turned, off);
  return scale(noisy, norm(spinRadps) / norm(noisy));
}
