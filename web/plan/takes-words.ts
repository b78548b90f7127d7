import type { ProposedTarget, TargetReason } from '../../core/coaching/propose-target.ts';
import type { Hand } from '../../core/facts/vocabulary.ts';
import { mirrorTilt } from '../../core/flight/mirror.ts';
import { mphToMps } from '../../core/units/convert.ts';
import { isNothing, movementIn, movementText, shareText, SPEED_UNIT, speedIn, spinText, tiltText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { paceWords } from '../words/throw-words.ts';
import type { ZoneTakes } from './within-arm.ts';

interface Way {
  readonly verticalM: number;
  readonly armSideM: number;
}

/** Less than this is nothing: no device sees it. */
const NOTHING_M = 0.00127;

/** A tilt of a right-hander's arm as this athlete's clock says it. */
export function tiltOf(tiltRad: number, hand: Hand): string {
  return tiltText(hand === 'left' ? mirrorTilt(tiltRad) : tiltRad);
}

/** The throw that comes nearest to the middle of the zone, in four readings. */
export function nearestWords({ toCentre: { thrown } }: ZoneTakes, hand: Hand, fastballMps: number, speech: Speech): { readonly tilt: string; readonly efficiency: string; readonly spin: string; readonly pace: string } {
  return {
    tilt: tiltOf(thrown.tiltRad, hand),
    efficiency: shareText(thrown.efficiency, speech),
    spin: spinText(thrown.spinRpm, speech),
    pace: paceWords(thrown.speedMps - fastballMps, speech),
  };
}

/** What spin leaves over to the edge of the zone, and what that would ask of the seams. */
export function leftOverWords({ toZone: { leftOver }, doubtM }: ZoneTakes, visible: boolean, speech: Speech): readonly string[] {
  const { target } = speech.words.plan;
  const doubt = movementText(doubtM, speech, 1);
  if (Math.hypot(leftOver.verticalM, leftOver.armSideM) < NOTHING_M) return [target.reached(doubt)];
  return [target.leftOver(wayWords(leftOver, speech), doubt), ...(visible ? [] : [target.leftUnseen])];
}

/** "3.1 in down, 1.0 in arm side"; a part that is nothing is left out. */
export function wayWords({ verticalM, armSideM }: Way, speech: Speech): string {
  const { measures } = speech.words;
  const parts = [
    ...(isNothing(movementIn(speech.units, verticalM), 1) ? [] : [(verticalM < 0 ? measures.down : measures.up)(movementText(Math.abs(verticalM), speech, 1))]),
    ...(isNothing(movementIn(speech.units, armSideM), 1) ? [] : [(armSideM > 0 ? measures.armSide : measures.gloveSide)(movementText(Math.abs(armSideM), speech, 1))]),
  ];
  return parts.length === 0 ? movementText(0, speech, 1) : parts.join(', ');
}

export interface StepRow {
  readonly step: string;
  readonly vertical: string;
  readonly side: string;
}

/** How far one step of each thing moves that throw, in the athlete's own numbers. A speed in km/h steps by two of them: about as much as a mile. */
export function stepRows({ steps }: ZoneTakes, hand: Hand, speech: Speech): readonly StepRow[] {
  const { target } = speech.words.plan;
  const perPace = speech.units === 'imperial' ? 1 : 2 / speedIn('metric', mphToMps(1));
  const row = (step: string, { verticalM, armSideM }: Way, times = 1): StepRow => ({
    step,
    vertical: wayWords({ verticalM: verticalM * times, armSideM: 0 }, speech),
    side: wayWords({ verticalM: 0, armSideM: armSideM * times }, speech),
  });
  return [
    // A left-hander's clock runs the other way; towards his arm side it moves the ball alike.
    row(hand === 'right' ? target.perTenDegrees.clockwise : target.perTenDegrees.counter, steps.perTenDegrees),
    row(target.perHundredRpm, steps.perHundredRpm),
    row(target.perPace(`${speech.units === 'imperial' ? 1 : 2} ${SPEED_UNIT[speech.units]}`), steps.perMph, perPace),
    row(target.perFivePoints, steps.perFivePoints),
  ];
}

/** Why a target is proposed where it is. What the zone's own numbers already say is left out. */
export function targetReasons({ reasons }: ProposedTarget, speech: Speech): readonly string[] {
  return reasons.flatMap((reason) => targetReasonWords(reason, speech) ?? []);
}

function targetReasonWords({ code, numbers }: TargetReason, speech: Speech): string | null {
  const { because } = speech.words.plan.target;
  const amount = (name: string): string => movementText(Math.abs(numbers[name] ?? 0), speech);
  const whole = (name: string): string => movementText(numbers[name] ?? 0, speech, 0);
  switch (code) {
    case 'usual-movement': return because[code](whole('verticalM'), whole('armSideM'));
    case 'drawn-into-reach': return because[code](amount('movedM'));
    case 'leaves-to-seam-effect':
    case 'leaves-to-split': return because[code](wayWords({ verticalM: numbers['verticalM'] ?? 0, armSideM: numbers['armSideM'] ?? 0 }, speech));
    case 'smaller-to-fit-reach': return because[code];
    case 'little-vertical-room':
    case 'gap-carries-it':
    case 'no-room-within-reach':
    case 'reach-unknown': return because[code];
  }
}
