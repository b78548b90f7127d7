import type { MeasuredThrow } from '../facts/si.ts';
import type { Reading, ThrowView } from '../facts/views.ts';
import { transverseCoefficients } from '../flight/movement.ts';
import { completedByPath, knownSpin, transverseSpinOf, type HowKnown, type KnownSpin } from '../flight/spin-known.ts';
import { tiltFromSpin } from '../flight/spin.ts';
import { norm, scale, type Vector } from '../flight/vector.ts';
import { rpmToRadps } from '../units/convert.ts';
import type { FlownAir } from './air-of.ts';
import type { Sighting } from './flight-of.ts';
import type { Seer } from './seer.ts';

type SpinReadings = Pick<ThrowView, 'spinRpm' | 'tiltRad' | 'efficiency' | 'gyroRad' | 'spinFrom'>;

export interface SpinSeen {
  readonly readings: SpinReadings;
  /** What the device itself tells, in the frame of the flight; null without spin, or without a flight to hold it against. */
  readonly told: KnownSpin | null;
}

/** The spin of a throw: as told, and where the flight was seen, what was not told filled in from it and marked inferred. */
export function spinOf({ spin }: MeasuredThrow, source: Seer, sighting: Sighting | null, { airDensityKgM3 }: FlownAir): SpinSeen {
  const absent: Reading = source.axis === 'none' ? 'not-visible' : 'not-sent';
  if (spin === null) return { readings: { spinRpm: 'not-sent', tiltRad: absent, efficiency: absent, gyroRad: absent, spinFrom: null }, told: null };
  const how: HowKnown = source.axis === 'measured' ? 'measured' : 'inferred';
  if (sighting === null) return { readings: withoutFlight(spin, how, absent), told: null };
  const velocityMps = velocityOf(sighting);
  const told = knownSpin({ ...spin, how }, velocityMps);
  const known = isWhole(told) ? told : completedByPath(told, acrossOf(sighting, airDensityKgM3), velocityMps);
  return { readings: { spinRpm: spin.rateRpm, ...axisReadings(known, velocityMps, absent) }, told };
}

/** Nothing is left to fill in. */
function isWhole({ kind }: KnownSpin): boolean {
  return kind === 'vector' || kind === 'across';
}

function velocityOf(sighting: Sighting): Vector {
  return sighting.kind === 'fit' ? sighting.fit.release.velocityMps : sighting.velocityMps;
}

/** The spin across the flight that the path asks for, by the law that it was read with. */
function acrossOf(sighting: Sighting, airDensityKgM3: number): Vector | null {
  if (sighting.kind === 'fit') return sighting.fit.transverseSpinRadps;
  const air = transverseCoefficients(sighting.path, sighting.releaseYM, airDensityKgM3);
  return air && transverseSpinOf(air);
}

function axisReadings(known: KnownSpin, velocityMps: Vector, absent: Reading): Omit<SpinReadings, 'spinRpm'> {
  switch (known.kind) {
    case 'vector': {
      const tilt = tiltFromSpin(known.spinRadps, velocityMps);
      return { tiltRad: tilt?.tiltRad ?? absent, efficiency: tilt?.efficiency ?? absent, gyroRad: tilt?.gyroRad ?? absent, spinFrom: tilt === null ? null : known.how };
    }
    case 'across': {
      const inferred = known.tiltHow === 'inferred' || known.efficiencyHow === 'inferred';
      return { tiltRad: known.tiltRad, efficiency: known.efficiency, gyroRad: absent, spinFrom: inferred ? 'inferred' : 'measured' };
    }
    case 'tilt': return { tiltRad: known.tiltRad, efficiency: absent, gyroRad: absent, spinFrom: known.how };
    case 'efficiency': return { tiltRad: absent, efficiency: known.efficiency, gyroRad: absent, spinFrom: known.how };
    case 'rate': return { tiltRad: absent, efficiency: absent, gyroRad: absent, spinFrom: null };
  }
}

/** Of a summary, or of a path that contradicts itself: the ball is taken to fly straight at the plate. */
function withoutFlight({ rateRpm, axis, ...said }: NonNullable<MeasuredThrow['spin']>, how: HowKnown, absent: Reading): SpinReadings {
  const tilt = axis === null ? null : tiltFromSpin(scale(axis, rpmToRadps(rateRpm) / norm(axis)));
  const tiltRad = tilt?.tiltRad ?? said.tiltRad;
  const efficiency = tilt?.efficiency ?? said.efficiency;
  return { spinRpm: rateRpm, tiltRad: tiltRad ?? absent, efficiency: efficiency ?? absent, gyroRad: tilt?.gyroRad ?? absent, spinFrom: tiltRad === null && efficiency === null ? null : how };
}
