import { defaultLaw, dragCoefficient, type AerodynamicLaw } from './aerodynamics.ts';
import type { ConstantAcceleration } from './constant-acceleration.ts';
import { constantThrough } from './constant-through.ts';
import { flyPitch, type Flight } from './fly.ts';
import { inducedBreak, inducedBreakBetween } from './movement.ts';
import type { PlaneVector } from './plane-vector.ts';
import { norm, type Vector } from './vector.ts';

/** The throw as it left the hand, and the air it flew through; SI, frame of the flight. */
export interface ThrownBall {
  readonly positionM: Vector;
  readonly velocityMps: Vector;
  readonly plateYM: number;
  readonly airDensityKgM3: number;
  /** Where it is known; still air when absent, and the wind is then in what the spin does not explain. */
  readonly windMps?: Vector;
  /** That of this throw's path, so that drag is the same in both flights; null takes the law's for the rate of spin. */
  readonly dragCoefficient: number | null;
  /** Total spin, where `dragCoefficient` is null. */
  readonly rateRpm: number;
  /**
   * How the observed break was told. `constant-acceleration` reads a release velocity that pays for the forces that fade and
   * shifts the break by 0.2–0.7 in; the flight it is held against is then told in the same way, so that the shift cancels.
   */
  readonly told: 'flight' | 'constant-acceleration';
}

/** Coarser than the shipped step: 0.2 nm·3⁴, under 20 nm at the plate, where a movement is wanted to a tenth of a millimetre. */
const stepS = 0.03;

/**
 * The induced break that a spin alone gives this throw, in the convention of `inducedBreak` (drag kept, release to front of
 * plate): the same release flown with the Magnus force of the spin and the drag of the throw. Because it is a break in the same
 * convention with the same drag, observed − spin-explained holds neither drag nor a choice of convention: only the force that the
 * spin does not explain, over the same distance. (½(a_M,observed − a_Magnus)·t² with drag removed is the same to first order, but
 * takes one mean force for a force that fades.) An error of the release velocity of 0.1 m/s shifts it by 0.02 in.
 * Null when the ball does not reach the plate.
 */
export function spinExplainedBreak(thrown: ThrownBall, spinRadps: Vector, law: AerodynamicLaw = defaultLaw): PlaneVector | null {
  const { positionM, velocityMps, plateYM, airDensityKgM3, windMps } = thrown;
  const drag = thrown.dragCoefficient ?? dragCoefficient(thrown.rateRpm);
  const forces = { airDensityKgM3, law: { dragCoefficient: () => drag, liftCoefficient: law.liftCoefficient }, ...(windMps && { windMps }) };
  const flight = flyPitch({ positionM, velocityMps, spinRadps }, { ...forces, until: { yM: plateYM }, timeStepS: stepS, longestS: longestS(thrown) });
  return flight.ending === 'plane' ? breakOf(flight, thrown) : null;
}

/** The break that drag, and a known wind, leave in the same convention: what is to be taken away to see the push of a spin. */
export function spinlessBreak(thrown: ThrownBall): PlaneVector | null {
  return spinExplainedBreak(thrown, [0, 0, 0]);
}

function breakOf(flight: Flight, { told, plateYM }: ThrownBall): PlaneVector | null {
  if (told === 'flight') return inducedBreakBetween(flight.start, flight.end);
  const path: ConstantAcceleration | null = constantThrough(flight);
  return path && inducedBreak(path, flight.start.positionM[1], plateYM);
}

/** No throw that arrives is slower on its way than a quarter of its start. */
function longestS({ positionM, velocityMps, plateYM }: ThrownBall): number {
  return (4 * Math.abs(positionM[1] - plateYM)) / norm(velocityMps);
}
