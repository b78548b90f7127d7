import type { Reading, ReadingWithError, ThrowView } from '../../core/facts/views.ts';
import type { Words } from '../words/words.ts';
import { readingText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { errorText } from './amounts.ts';

export type NumberName = keyof Words['throwNumbers']['names'];

/** One number of a throw, in words. */
export interface NumberRow {
  readonly number: NumberName;
  readonly name: string;
  /** With its unit; or why there is none. */
  readonly value: string;
  readonly known: boolean;
  /** What it rests on, and how sure it is; each a phrase. */
  readonly rests: readonly string[];
  /** In one line: what it tells. */
  readonly tells: string;
}

/** A row that says its value, or why there is none; what a number rests on is said where there is one. */
export function numberRow(number: NumberName, reading: Reading, say: (value: number) => string, rests: readonly (string | null)[], speech: Speech): NumberRow {
  const known = typeof reading === 'number';
  return wordRow(number, readingText(reading, say, speech), known, known ? rests : [], speech);
}

/** A row whose value is in words already. */
export function wordRow(number: NumberName, value: string, known: boolean, rests: readonly (string | null)[], { words: { throwNumbers } }: Speech): NumberRow {
  return { number, name: throwNumbers.names[number], value, known, rests: rests.filter((phrase) => phrase !== null), tells: throwNumbers.tells[number] };
}

/** "standard error 0.12 in": of a reading of the path, where the path gave one. */
export function errorOf({ standardErrors }: ThrowView, reading: ReadingWithError, speech: Speech): string | null {
  return standardErrors === null ? null : speech.words.throwNumbers.error(errorText(reading, standardErrors[reading], speech));
}

/** What everything told from the flight itself rests on: the path that was seen, or the device's word. */
export function seenBy({ flightTimeFrom }: ThrowView, { words: { throwNumbers: { rests } } }: Speech): string {
  return flightTimeFrom === 'path' ? rests.path : rests.device;
}
