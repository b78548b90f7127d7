import { errorsToSi } from '../facts/si.ts';
import type { HiddenBecause, UnexplainedReading, UnexplainedView } from '../facts/views.ts';
import type { Hand } from '../facts/vocabulary.ts';
import { plate } from '../flight/ball.ts';
import { seenAsConstant, seenInSamples } from '../flight/seen-throw.ts';
import type { SpinErrors } from '../flight/spin-errors.ts';
import type { KnownSpin } from '../flight/spin-known.ts';
import { tiltFromSpin } from '../flight/spin.ts';
import { unexplainedMovement, type SeenThrow, type UnexplainedMovement } from '../flight/unexplained.ts';
import type { Vector } from '../flight/vector.ts';
import type { FlownAir } from './air-of.ts';
import type { SeenFlight, Sighting } from './flight-of.ts';
import type { Seer } from './seer.ts';

/**
 * The movement that the measured spin of a throw does not explain. A device that cannot show it says so of every throw; one that
 * can says what this throw lacks. Towards the catcher's right where it says arm side, and across clockwise for the pitcher: turned
 * by `unexplainedFor`.
 */
export function unexplainedOf({ sighting, problem }: SeenFlight, told: KnownSpin | null, air: FlownAir, source: Seer): UnexplainedReading {
  const hidden = hiddenBecause(source);
  if (hidden !== null) return { kind: 'not-visible', reason: hidden };
  if (problem !== null) return { kind: 'problem' };
  if (sighting === null || told === null) return { kind: 'not-sent' };
  if (told.rateRpm === 0) return { kind: 'not-defined' };
  const seen = seenThrow(sighting, told, air, source);
  const found = seen && unexplainedMovement(seen);
  if (found === null) return { kind: 'not-defined' };
  return found.kind === 'unexplained' ? viewOf(found) : { kind: 'not-sent' };
}

function hiddenBecause({ sight, axis }: Seer): HiddenBecause | null {
  if (sight === 'spin-only') return 'spin-only';
  switch (axis) {
    case 'measured': return null;
    case 'inferred': return 'axis-inferred';
    case 'none': return 'no-axis';
  }
}

function seenThrow(sighting: Sighting, spin: KnownSpin, air: FlownAir, { standardErrors, units }: Seer): SeenThrow | null {
  const errors = errorsToSi(standardErrors ?? {}, units);
  switch (sighting.kind) {
    case 'fit': return seenInSamples(sighting.fit, { ...air, spin, spinErrors: spinErrors(spin, errors, sighting.fit.release.velocityMps) });
    case 'constant': {
      const planes = { releaseYM: sighting.releaseYM, plateYM: plate.frontYM };
      return seenAsConstant(sighting.path, planes, errors.movementM, { ...air, spin, spinErrors: spinErrors(spin, errors, sighting.velocityMps) });
    }
  }
}

/** A tilt is read from the part of the axis across the flight, so its error is that of the axis over the efficiency. */
function spinErrors(spin: KnownSpin, { spinRateRpm, tiltRad }: ReturnType<typeof errorsToSi>, velocityMps: Vector): SpinErrors | null {
  if (spinRateRpm === null || tiltRad === null) return null;
  const efficiency = spin.kind === 'vector' ? tiltFromSpin(spin.spinRadps, velocityMps)?.efficiency : spin.kind === 'across' ? spin.efficiency : undefined;
  return efficiency === undefined ? null : { rateRpm: spinRateRpm, axisRad: tiltRad * efficiency };
}

function viewOf({ unexplained, spinExplained, components, measurement, model }: UnexplainedMovement): UnexplainedView {
  return {
    kind: 'unexplained',
    verticalM: unexplained.verticalM,
    armSideM: unexplained.horizontalM,
    spinVerticalM: spinExplained.verticalM,
    spinArmSideM: spinExplained.horizontalM,
    pushM: components?.pushM ?? null,
    acrossM: components?.acrossM ?? null,
    measurement,
    model,
  };
}

/** In the athlete's terms: +x is a left-hander's arm side, and clockwise for the pitcher is from 12:00 towards a right-hander's. */
export function unexplainedFor(hand: Hand | null, reading: UnexplainedReading): UnexplainedReading {
  if (reading.kind !== 'unexplained') return reading;
  if (hand === null) return { kind: 'not-defined' };
  const side = hand === 'right' ? -1 : 1;
  const turned = ([vv, va, aa]: UnexplainedView['model']): UnexplainedView['model'] => [vv, side * va, aa];
  const { armSideM, spinArmSideM, acrossM, measurement, model } = reading;
  return {
    ...reading,
    armSideM: side * armSideM,
    spinArmSideM: side * spinArmSideM,
    acrossM: acrossM && -side * acrossM,
    measurement: measurement && turned(measurement),
    model: turned(model),
  };
}
