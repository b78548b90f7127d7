import type { ThrowBody } from '../../../core/facts/frames.ts';
import type { Hand } from '../../../core/facts/vocabulary.ts';
import { stateAtY } from '../../../core/flight/constant-acceleration.ts';
import { constantThrough } from '../../../core/flight/constant-through.ts';
import { flyPitch, type Flight } from '../../../core/flight/fly.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import type { Vector } from '../../../core/flight/vector.ts';
import { degToRad, feetToM, mphToMps } from '../../../core/units/convert.ts';

export const UNITS = { distance: 'm', speed: 'm/s', movement: 'm' } as const;
export const SPIN_RPM = 1800;
export const TILT_DEG = 60;
export const EFFICIENCY = 0.9;

export interface FlownWith {
  /** Force across the flight that spin does not explain, as a coefficient; arm side and up positive. */
  readonly seam?: { readonly armSide: number; readonly up: number };
  readonly windMps?: Vector;
  readonly airDensityKgM3?: number;
  /** Small differences from throw to throw: degrees of tilt. */
  readonly tiltMoreDeg?: number;
}

/** A changeup of 84 mph, 1,800 rpm, 60° towards the arm side, flown with the exact equations; a left-hander's is its mirror. */
export function flownChangeup(hand: Hand, { seam = { armSide: 0, up: 0 }, windMps = [0, 0, 0], airDensityKgM3 = 1.2, tiltMoreDeg = 0 }: FlownWith = {}): { flight: Flight; spinRadps: Vector } {
  const arm = hand === 'right' ? -1 : 1;
  const velocityMps: Vector = [-arm * 1.2, -mphToMps(84), -0.6];
  const spin = { tiltRad: -arm * degToRad(TILT_DEG + tiltMoreDeg), efficiency: EFFICIENCY, spinRpm: SPIN_RPM, velocityMps };
  const spinRadps = spinAxisFromTilt({ ...spin, gyroSign: hand === 'right' ? 1 : -1 });
  const flight = flyPitch({ positionM: [arm * 0.6, feetToM(54.5), 1.8], velocityMps, spinRadps }, { airDensityKgM3, windMps, seamCoefficient: { x: arm * seam.armSide, z: seam.up } });
  return { flight, spinRadps };
}

/** Seen without noise 100 times, in metres. */
export function pathOf({ end, positionAt }: Flight): NonNullable<ThrowBody['path']> {
  return Array.from({ length: 100 }, (_, i) => {
    const timeS = (end.timeS * i) / 99;
    const [x, y, z] = positionAt(timeS);
    return [timeS, x, y, z] as [number, number, number, number];
  });
}

/** As a device that boils a flight down tells it. */
export function constantOf(flight: Flight): NonNullable<ThrowBody['constant']> {
  const path = constantThrough(flight)!;
  const start = stateAtY(path, flight.start.positionM[1])!;
  const triple = ([x, y, z]: Vector): [number, number, number] => [x, y, z];
  return { start: triple(start.positionM), velocity: triple(start.velocityMps), acceleration: triple(path.accelerationMps2), distance: start.positionM[1] };
}

/** The frame of a device that sees the path and reads the axis off the ball. */
export function bodyOf(hand: Hand, flown: FlownWith = {}): ThrowBody {
  const { flight, spinRadps } = flownChangeup(hand, flown);
  return { path: pathOf(flight), spin: { rate: SPIN_RPM, axis: [...spinRadps] as [number, number, number] }, extension: feetToM(6) };
}
