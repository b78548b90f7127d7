import type { ReadingWithError } from '../../core/facts/views.ts';
import { radToDeg } from '../../core/units/convert.ts';
import { distanceText, movementIn, MOVEMENT_UNIT, numberText, speedIn, SPEED_UNIT } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

/** Amounts as the numbers of a throw say them: finer than a screen that is read from afar. */

/** A place of the body or a height: hundredths of a foot, or centimetres as metres. */
export function placeText(metres: number, speech: Speech): string {
  return distanceText(metres, speech, speech.units === 'imperial' ? 2 : 1);
}

/** Tenths of an inch, or of a centimetre. */
export function moveText(metres: number, { units, language }: Speech): string {
  return `${numberText(movementIn(units, metres), 1, language)} ${MOVEMENT_UNIT[units]}`;
}

/** "16.1 in arm side": a side is never said as a minus. */
export function toSide(metres: number, say: (metres: number) => string, { words: { measures } }: Speech): string {
  return metres < 0 ? measures.gloveSide(say(-metres)) : measures.armSide(say(metres));
}

/** "10.7 in up". */
export function toHeight(metres: number, say: (metres: number) => string, { words: { measures } }: Speech): string {
  return metres < 0 ? measures.down(say(-metres)) : measures.up(say(metres));
}

/** Tenths of a degree. */
export function angleText(rad: number, { language, words }: Speech, decimals = 1): string {
  return words.throwNumbers.degrees(numberText(radToDeg(rad), decimals, language));
}

/** Tenths of a millisecond. */
export function timeText(seconds: number, { language, words }: Speech): string {
  return words.measures.milliseconds(numberText(seconds * 1000, 1, language));
}

/** A standard error in the unit of its reading, to the hundredth; one smaller than that is not said to be nothing. */
export function errorText(reading: ReadingWithError, error: number, speech: Speech): string {
  switch (reading) {
    case 'speedMps':
    case 'plateSpeedMps': return atLeast(speedIn(speech.units, error), (text) => `${text} ${SPEED_UNIT[speech.units]}`, speech);
    case 'flightTimeS': return atLeast(error * 1000, speech.words.measures.milliseconds, speech);
    case 'verticalApproachRad':
    case 'horizontalApproachRad': return atLeast(radToDeg(error), speech.words.throwNumbers.degrees, speech);
    default: return lengthErrorText(error, speech);
  }
}

/** A standard error of a length: inches or centimetres. */
export function lengthErrorText(metres: number, speech: Speech): string {
  return atLeast(movementIn(speech.units, metres), (text) => `${text} ${MOVEMENT_UNIT[speech.units]}`, speech);
}

function atLeast(amount: number, withUnit: (text: string) => string, { language, words }: Speech): string {
  return amount < 0.005 ? words.throwNumbers.under(withUnit(numberText(0.01, 2, language))) : withUnit(numberText(amount, 2, language));
}
