import { mpsToKmh, mpsToMph, mToFeet, mToInches } from '../../core/units/convert.ts';
import type { Reading } from '../../core/facts/views.ts';
import { LOCALE, type Language } from './language.ts';
import type { Speech, Units } from './speech.ts';

/** Amounts with their unit, in the viewer's units. Every one takes SI. A minus is written as a minus sign, never as a hyphen. */

const FORMATS = new Map<string, Intl.NumberFormat>();

/** A number with exactly the given decimals; never "−0". */
export function numberText(value: number, decimals: number, language: Language): string {
  const key = `${language}${decimals}`;
  const format = FORMATS.get(key) ?? new Intl.NumberFormat(LOCALE[language], { minimumFractionDigits: decimals, maximumFractionDigits: decimals, signDisplay: 'negative' });
  FORMATS.set(key, format);
  return format.format(value).replace('-', '−');
}

/** A length of movement in the viewer's unit, as a bare number: inches or centimetres. */
export function movementIn(units: Units, metres: number): number {
  return units === 'imperial' ? mToInches(metres) : metres * 100;
}
export const MOVEMENT_UNIT: Readonly<Record<Units, string>> = { imperial: 'in', metric: 'cm' };

/** How a picture of lengths of movement is ruled: so many of the viewer's unit to a metre. */
export function movementRuling(units: Units): { readonly perSi: number; readonly unit: string } {
  return { perSi: movementIn(units, 1), unit: MOVEMENT_UNIT[units] };
}

/** A speed in the viewer's unit, as a bare number: miles or kilometres an hour. */
export function speedIn(units: Units, mps: number): number {
  return units === 'imperial' ? mpsToMph(mps) : mpsToKmh(mps);
}
export const SPEED_UNIT: Readonly<Record<Units, string>> = { imperial: 'mph', metric: 'km/h' };

/** Whether an amount, in the unit it is said in, is said as nothing at so many decimals. */
export function isNothing(value: number, decimals: number): boolean {
  return Math.abs(value) < 0.5 * 10 ** -decimals;
}

/** Movement with its unit: tenths of an inch or whole centimetres, unless other decimals are asked for. */
export function movementText(metres: number, { units, language }: Speech, decimals = units === 'imperial' ? 1 : 0): string {
  return `${numberText(movementIn(units, metres), decimals, language)} ${MOVEMENT_UNIT[units]}`;
}

/** A speed with its unit, to one decimal unless others are asked for. */
export function speedText(mps: number, { units, language }: Speech, decimals = 1): string {
  return `${numberText(speedIn(units, mps), decimals, language)} ${SPEED_UNIT[units]}`;
}

/** A distance or height with its unit: feet or metres. */
export function distanceText(metres: number, { units, language }: Speech, decimals = 1): string {
  return units === 'imperial' ? `${numberText(mToFeet(metres), decimals, language)} ft` : `${numberText(metres, decimals + 1, language)} m`;
}

/** A duration in whole milliseconds. */
export function millisecondsText(seconds: number, { language, words }: Speech): string {
  return words.measures.milliseconds(numberText(seconds * 1000, 0, language));
}

/** A spin rate, to the ten: no device knows it better. */
export function spinText(rpm: number, { language, words }: Speech): string {
  return words.measures.rpm(numberText(Math.round(rpm / 10) * 10, 0, language));
}

/** A share between 0 and 1, in whole percent. */
export function shareText(share: number, { language, words }: Speech): string {
  return words.measures.percent(numberText(share * 100, 0, language));
}

/** A tilt as the clock says it: 0 and 2π are 12:00, a quarter turn 3:00. To the five minutes that a clock face shows. */
export function tiltText(tiltRad: number): string {
  const minutes = ((Math.round((tiltRad / (2 * Math.PI)) * 144) * 5) % 720 + 720) % 720;
  const hour = Math.floor(minutes / 60);
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A reading said by `say`, or why there is none. */
export function readingText(reading: Reading, say: (value: number) => string, { words }: Speech): string {
  return typeof reading === 'number' ? say(reading) : words.measures.missing[reading];
}
