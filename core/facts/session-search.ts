import { z } from 'zod';
import { STAGES } from './vocabulary.ts';
import type { SessionListing } from './wire.ts';

/** Looking for recorded sessions: GET /api/sessions/found?athlete=…&from=… */

const words = z.string().trim().max(100).optional();
const day = z.iso.date('a day is written as 2026-03-14').optional();

/** What is looked for; what is absent is not asked. Every word must be found; case and accents do not matter. */
export const sessionQuestionSchema = z.strictObject({
  athlete: words.describe('Words of the athlete’s name.'),
  from: day.describe('The first day, in the session’s own time zone.'),
  to: day.describe('The last day.'),
  stage: z.enum(STAGES).optional(),
  trial: words.describe('The letter of a trial, or words of its intent, family, grip or cue; all in one trial.'),
  note: words.describe('Words of a note; all in one note.'),
  skip: z.coerce.number().int().min(0).max(1_000_000).default(0),
  take: z.coerce.number().int().min(1).max(100).default(25),
});
export type SessionQuestion = z.infer<typeof sessionQuestionSchema>;
export const CRITERIA = ['athlete', 'from', 'to', 'stage', 'trial', 'note'] as const;
export type Criterion = (typeof CRITERIA)[number];

/** A session that was found, and what in it matched. */
export interface SessionFound extends SessionListing {
  readonly notes: number;
  readonly bookmarks: number;
  /** Trials that matched, by letter, and notes; empty where none was asked for. */
  readonly trialsFound: readonly string[];
  readonly notesFound: readonly { readonly text: string; readonly place: number | null }[];
}

export interface SessionsFound {
  /** A page of them, newest first. */
  readonly sessions: readonly SessionFound[];
  readonly total: number;
  /** Where nothing was found: how many there would be without each thing that was asked. */
  readonly without: Readonly<Partial<Record<Criterion, number>>>;
}
