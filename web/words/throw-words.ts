import type { SpeedBand } from '../../core/facts/coach.ts';
import type { MissView, ThrowView } from '../../core/facts/views.ts';
import { isNothing, movementIn, movementText, millisecondsText, numberText, speedIn, speedText, SPEED_UNIT, MOVEMENT_UNIT } from './numbers.ts';
import type { Speech } from './speech.ts';

/** One throw in the words of the trade. Separations are throw minus fastball, SI; amounts are said whole unless asked. */

/** "8 in down": which way and how far it dropped against the fastball. */
export function verticalWords(verticalM: number, speech: Speech, decimals = 0): string {
  const { measures } = speech.words;
  if (isNothing(movementIn(speech.units, verticalM), decimals)) return measures.likeFastballVertical;
  const amount = movementText(Math.abs(verticalM), speech, decimals);
  return verticalM < 0 ? measures.down(amount) : measures.up(amount);
}

/** "3 in arm side". */
export function sideWords(armSideM: number, speech: Speech, decimals = 0): string {
  const { measures } = speech.words;
  if (isNothing(movementIn(speech.units, armSideM), decimals)) return measures.likeFastballSide;
  const amount = movementText(Math.abs(armSideM), speech, decimals);
  return armSideM > 0 ? measures.armSide(amount) : measures.gloveSide(amount);
}

/** "11 mph slower". */
export function paceWords(speedGapMps: number, speech: Speech, decimals = 0): string {
  const { measures } = speech.words;
  if (isNothing(speedIn(speech.units, speedGapMps), decimals)) return measures.samePace;
  const amount = speedText(Math.abs(speedGapMps), speech, decimals);
  return speedGapMps < 0 ? measures.slower(amount) : measures.faster(amount);
}

/** "52 ms later": when it arrives against the fastball. */
export function arrivalWords(arrivalS: number, speech: Speech): string {
  const { measures } = speech.words;
  if (isNothing(arrivalS * 1000, 0)) return measures.sameArrival;
  const amount = millisecondsText(Math.abs(arrivalS), speech);
  return arrivalS > 0 ? measures.later(amount) : measures.earlier(amount);
}

/** A direction is named when the way to the zone leans towards it by more than an eighth of a turn's half. */
const LEAN = Math.sin(Math.PI / 8);

/**
 * "4 in short, glove side": how far off the nearest edge of the zone the throw was, and to which side it erred.
 * Below a fastball, too little drop is short and too much is deep; a zone above it is missed too low or too high.
 */
export function missWords(miss: MissView, speech: Speech): string {
  if (miss.onTarget) return speech.words.trade.onTarget;
  const { measures } = speech.words;
  const far = Math.hypot(miss.toEdgeVerticalM, miss.toEdgeArmSideM);
  return measures.miss(offBy(far, speech), missWays(miss, speech));
}

/** The directions of a miss, in words; none for a throw on the very edge. */
export function missWays({ toEdgeVerticalM, toEdgeArmSideM, zoneVerticalM }: MissView, { words: { measures, trade } }: Speech): string[] {
  const far = Math.hypot(toEdgeVerticalM, toEdgeArmSideM);
  const ways: string[] = [];
  if (Math.abs(toEdgeVerticalM) > LEAN * far) {
    const wentHigh = toEdgeVerticalM < 0;
    if (zoneVerticalM < 0) ways.push(wentHigh ? measures.short : measures.deep);
    else ways.push(wentHigh ? measures.tooHigh : measures.tooLow);
  }
  if (Math.abs(toEdgeArmSideM) > LEAN * far) ways.push(toEdgeArmSideM > 0 ? trade.gloveSide : trade.armSide);
  return ways;
}

/** "pace on target", "2 mph too fast". */
export function bandWords(speedGapMps: number, band: SpeedBand, speech: Speech): string {
  const { measures } = speech.words;
  const amount = (mps: number): string => `${atLeastATenth(speedIn(speech.units, mps), speech)} ${SPEED_UNIT[speech.units]}`;
  if (speedGapMps > band.highMps) return measures.paceTooFast(amount(speedGapMps - band.highMps));
  if (speedGapMps < band.lowMps) return measures.paceTooSlow(amount(band.lowMps - speedGapMps));
  return measures.paceOn;
}

function offBy(metres: number, speech: Speech): string {
  return `${atLeastATenth(movementIn(speech.units, metres), speech)} ${MOVEMENT_UNIT[speech.units]}`;
}

/** Whole; below one a tenth, and never less, so that a miss is not said to be nothing. */
function atLeastATenth(value: number, { language }: Speech): string {
  return value >= 0.95 ? numberText(value, 0, language) : numberText(Math.max(0.1, value), 1, language);
}

/** What was thrown: its intent, and its trial's letter. */
export function whatWords({ intent, trial, fastball }: ThrowView, { words: { trade } }: Speech): string {
  const what = intent === null ? trade.noIntent : trade.intent[intent];
  return trial === null || fastball ? what : `${what} ${trial}`;
}
