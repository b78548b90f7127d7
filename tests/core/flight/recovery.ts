import { dragCoefficient, spinParameterOf, liftCoefficient } from '../../../core/flight/aerodynamics.ts';
import { horizontalApproachRad, verticalApproachRad } from '../../../core/flight/approach.ts';
import type { FittedPath } from '../../../core/flight/fitted-path.ts';
import { flyPitch, type Flight, type Launch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { fitPath, type PathFitOptions } from '../../../core/flight/path-fit.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { add, dot, norm, scale, type Vector } from '../../../core/flight/vector.ts';
import { degreeRad, footM, inchM, mphMps } from './feet-and-miles.ts';
import type { seeded } from './noise.ts';
import { samplesOf } from './seen.ts';

export interface Thrown {
  readonly launch: Launch;
  readonly flight: Flight;
}

type Chance = ReturnType<typeof seeded>;
const within = ({ uniform }: Chance, low: number, high: number): number => low + (high - low) * uniform();

/** A pitch somewhere in the ranges that pitches have, from fastball to splitter, thrown by core's release and spin. */
export function anyPitch(chance: Chance, airDensityKgM3: number): Thrown {
  const speed = within(chance, 70, 102) * mphMps;
  const up = within(chance, -3, 2) * degreeRad;
  const across = within(chance, -3, 3) * degreeRad;
  const velocityMps: Vector = [speed * Math.cos(up) * Math.sin(across), -speed * Math.cos(up) * Math.cos(across), speed * Math.sin(up)];
  const launch: Launch = {
    positionM: [within(chance, -0.9, 0.9), within(chance, 53.5, 55.5) * footM, within(chance, 1.2, 2.1)],
    velocityMps,
    spinRadps: spinAxisFromTilt({ tiltRad: within(chance, 0, 2 * Math.PI), efficiency: within(chance, 0.3, 1), spinRpm: within(chance, 900, 2700), gyroSign: chance.uniform() < 0.5 ? 1 : -1, velocityMps }),
  };
  return { launch, flight: flyPitch(launch, { airDensityKgM3 }) };
}

/** Each number that the fit reports, as it came out, its standard error, and as it was; where the truth is not known, without it. */
export type Told = Readonly<Record<string, readonly [told: number, error: number, truth: number]>>;

/** Spin along the flight, from release to plate, as a device with a measured axis knows it. */
export function alongOf({ launch, flight }: Thrown): number {
  const way = add(flight.end.positionM, scale(flight.start.positionM, -1));
  return dot(launch.spinRadps, way) / norm(way);
}

/** The throw seen with noise of 2–6 mm in 80–200 samples and fitted. */
export function seenAndFitted(thrown: Thrown, chance: Chance, options: PathFitOptions): FittedPath {
  const samples = samplesOf(thrown.flight, { count: 80 + Math.floor(121 * chance.uniform()), noiseM: within(chance, 0.002, 0.006), seed: Math.floor(1e9 * chance.uniform()) });
  const fit = fitPath(samples, { fromYM: thrown.flight.start.positionM[1], ...options });
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  return fit;
}

export function breakAndPlaces(fit: FittedPath, { flight: { start, end } }: Thrown): Told {
  const moved = inducedBreakBetween(start, end);
  const { errors } = fit;
  return {
    'vertical break': [fit.breaks.verticalM, errors.verticalM, moved.verticalM],
    'horizontal break': [fit.breaks.horizontalM, errors.horizontalM, moved.horizontalM],
    'release side': [fit.release.positionM[0], errors.releaseM[0], start.positionM[0]],
    'release height': [fit.release.positionM[2], errors.releaseM[2], start.positionM[2]],
    'release speed': [norm(fit.release.velocityMps), errors.releaseSpeedMps, norm(start.velocityMps)],
    'release velocity x': [fit.release.velocityMps[0], errors.releaseVelocityMps[0], start.velocityMps[0]],
    'release velocity z': [fit.release.velocityMps[2], errors.releaseVelocityMps[2], start.velocityMps[2]],
    'plate side': [fit.arrival.positionM[0], errors.arrivalM[0], end.positionM[0]],
    'plate height': [fit.arrival.positionM[2], errors.arrivalM[2], end.positionM[2]],
    'plate speed': [norm(fit.arrival.velocityMps), errors.arrivalSpeedMps, norm(end.velocityMps)],
    'flight time': [fit.arrival.timeS, errors.flightTimeS, end.timeS],
    'vertical approach': [verticalApproachRad(fit.arrival.velocityMps), errors.verticalApproachRad, verticalApproachRad(end.velocityMps)],
    'horizontal approach': [horizontalApproachRad(fit.arrival.velocityMps), errors.horizontalApproachRad, horizontalApproachRad(end.velocityMps)],
  };
}

/** Coefficients and spin, where the throw was flown by the law it is fitted with and nothing else pushed. */
export function coefficients(fit: FittedPath, { launch: { spinRadps }, flight }: Thrown): Told {
  const middle = flight.stateAt(flight.end.timeS / 2).velocityMps;
  const s = spinParameterOf(spinRadps, middle);
  return {
    'drag coefficient': [fit.dragCoefficient, fit.errors.dragCoefficient, dragCoefficient((norm(spinRadps) * 30) / Math.PI)],
    'lift coefficient': [fit.liftCoefficient, fit.errors.liftCoefficient, liftCoefficient(s)],
    'transverse spin': [norm(fit.transverseSpinRadps), fit.errors.transverseSpinRadps, (s * norm(middle)) / (9.125 * inchM / (2 * Math.PI))],
  };
}

export interface Recovered {
  readonly name: string;
  /** Mean of error over standard error. */
  readonly bias: number;
  /** Share of throws whose 95 % interval holds the truth. */
  readonly covered: number;
}

export function recoveredIn(tolds: readonly Told[]): Recovered[] {
  return Object.keys(tolds[0]!).map((name) => {
    const scores = tolds.map((told) => { const [value, error, truth] = told[name]!; return (value - truth) / error; });
    return {
      name,
      bias: scores.reduce((sum, z) => sum + z, 0) / scores.length,
      covered: scores.filter((z) => Math.abs(z) < 1.96).length / scores.length,
    };
  });
}

export const spoken = (recovered: readonly Recovered[]): string =>
  recovered.map(({ name, bias, covered }) => `${name} ${bias.toFixed(3)} σ ${(100 * covered).toFixed(1)} %`).join(', ');
