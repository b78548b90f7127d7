import type { ComparisonEntry } from '../../core/facts/advice-view.ts';
import { dateText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import type { FoldedSession } from './record.ts';
import type { TrialRow } from './rows.ts';

/** How two trials are called where they stand beside each other. */
export interface Names {
  readonly a: string;
  readonly b: string;
}

/** Two rows by their letters; two of one letter by their dates too. */
export function rowNames(a: TrialRow, b: TrialRow, { words, language }: Speech): Names {
  if (a.letter !== b.letter) return { a: a.letter, b: b.letter };
  const dated = ({ letter, atMs, timeZone }: TrialRow): string => words.trials.frame.trialOf(letter, dateText(atMs, timeZone, language));
  return { a: dated(a), b: dated(b) };
}

/** The trials of a comparison by the letters of its first day. */
export function entryNames({ days }: ComparisonEntry): Names {
  return { a: days[0]!.a, b: days[0]!.b };
}

/** The day of a session, in its own time zone; of one that came out of a file, with a word on that. */
export function sessionDate({ entry }: Pick<FoldedSession, 'entry'>, { words, language }: Speech): string {
  const date = dateText(entry.openedAtMs, entry.timeZone, language);
  return entry.imported === undefined ? date : words.trials.frame.fromFile(date);
}
