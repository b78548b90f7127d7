import { rpmToRadps } from '../units/convert.ts';
import { spinParameterForLift } from './aerodynamics.ts';
import { ball } from './ball.ts';
import type { TransverseCoefficients } from './movement.ts';
import { spinAxisFromGyro, spinAxisFromTilt, tiltFromSpin } from './spin.ts';
import { cross, norm, scale, type Vector } from './vector.ts';

/** `measured` from the ball's turning itself; `inferred` from its path, so that whatever else pushed the ball is in it. */
export type HowKnown = 'measured' | 'inferred';

/** What a device tells of one spin, in the frame of the flight. Everything but the rate may be missing. */
export interface SpinTold {
  readonly rateRpm: number;
  /** Direction by the right-hand rule, any length. */
  readonly axis?: Vector | null;
  readonly tiltRad?: number | null;
  readonly efficiency?: number | null;
  /** Signed, positive along the flight. */
  readonly gyroRad?: number | null;
  /** Of the part along the flight, for a device that tells efficiency and sign apart. */
  readonly gyroSign?: 1 | -1 | null;
  /** How the device itself came to know its axis, tilt and efficiency. */
  readonly how: HowKnown;
}

/**
 * What is known of a spin, and how. Nothing is filled in with a guess:
 * - `vector`: the whole spin;
 * - `across`: the part across the flight, which is all that lifts, and how large the part along it is, but not its sign;
 * - `tilt`, `efficiency`: one of the two alone;
 * - `rate`: how fast, and nothing of the axis.
 */
export type KnownSpin =
  | { readonly kind: 'vector'; readonly how: HowKnown; readonly rateRpm: number; readonly spinRadps: Vector }
  | {
      readonly kind: 'across';
      readonly tiltHow: HowKnown;
      readonly efficiencyHow: HowKnown;
      readonly rateRpm: number;
      readonly tiltRad: number;
      readonly efficiency: number;
    }
  | { readonly kind: 'tilt'; readonly how: HowKnown; readonly rateRpm: number; readonly tiltRad: number }
  | { readonly kind: 'efficiency'; readonly how: HowKnown; readonly rateRpm: number; readonly efficiency: number }
  | { readonly kind: 'rate'; readonly rateRpm: number };

/**
 * What a device's words amount to for a ball flying with `velocityMps`. Where it says more than is needed, the axis is
 * believed before tilt and gyro angle, and these before the efficiency, because that is the order of what they leave open.
 */
export function knownSpin(told: SpinTold, velocityMps: Vector): KnownSpin {
  const { rateRpm, axis, tiltRad = null, gyroRad = null, how } = told;
  if (axis && norm(axis) > 0) return { kind: 'vector', how, rateRpm, spinRadps: scale(axis, rpmToRadps(rateRpm) / norm(axis)) };
  const efficiency = clampedShare(gyroRad === null ? (told.efficiency ?? null) : Math.cos(gyroRad));
  if (tiltRad === null) return efficiency === null ? { kind: 'rate', rateRpm } : { kind: 'efficiency', how, rateRpm, efficiency };
  if (efficiency === null) return { kind: 'tilt', how, rateRpm, tiltRad };
  if (gyroRad !== null) return { kind: 'vector', how, rateRpm, spinRadps: spinAxisFromGyro({ tiltRad, gyroRad, spinRpm: rateRpm, velocityMps }) };
  const gyroSign = told.gyroSign ?? (efficiency === 1 ? 1 : null);
  if (gyroSign === null) return { kind: 'across', tiltHow: how, efficiencyHow: how, rateRpm, tiltRad, efficiency };
  return { kind: 'vector', how, rateRpm, spinRadps: spinAxisFromTilt({ tiltRad, efficiency, gyroSign, spinRpm: rateRpm, velocityMps }) };
}

/**
 * Fills in what a device did not tell from the transverse spin that the path asks for (rad/s, by the lift law the path was
 * read with), and marks it `inferred`. What was told stays. An efficiency above 1, which a seam's push or another lift law
 * asks for, counts as 1. A path that shows no push, or a ball that does not turn, leaves everything as it was.
 */
export function completedByPath(known: KnownSpin, transverseRadps: Vector | null, velocityMps: Vector): KnownSpin {
  const seen = transverseRadps && known.rateRpm > 0 ? tiltFromSpin(transverseRadps, velocityMps) : null;
  if (seen === null || seen.tiltRad === null) return known;
  const efficiency = Math.min(1, seen.transverseRpm / known.rateRpm);
  const { rateRpm } = known;
  switch (known.kind) {
    case 'vector':
    case 'across':
      return known;
    case 'tilt':
      return { kind: 'across', tiltHow: known.how, efficiencyHow: 'inferred', rateRpm, tiltRad: known.tiltRad, efficiency };
    case 'efficiency':
      return { kind: 'across', tiltHow: 'inferred', efficiencyHow: known.how, rateRpm, tiltRad: seen.tiltRad, efficiency: known.efficiency };
    case 'rate':
      return { kind: 'across', tiltHow: 'inferred', efficiencyHow: 'inferred', rateRpm, tiltRad: seen.tiltRad, efficiency };
  }
}

/** The transverse spin, rad/s, whose Magnus force by the default law is the push of a constant-acceleration path; null where none is. */
export function transverseSpinOf({ magnusMps2, meanVelocityMps, liftCoefficient }: TransverseCoefficients): Vector | null {
  const spinParameter = spinParameterForLift(liftCoefficient);
  const axis = cross(meanVelocityMps, magnusMps2);
  const length = norm(axis);
  return spinParameter === null || length === 0 ? null : scale(axis, (spinParameter * norm(meanVelocityMps)) / (ball.radiusM * length));
}

function clampedShare(share: number | null): number | null {
  return share === null ? null : Math.min(1, Math.max(0, share));
}
