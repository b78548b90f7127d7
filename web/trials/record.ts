import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { AthleteDays } from '../../core/facts/wire.ts';
import { foldFact } from '../../core/session/fold.ts';
import type { Ledger, SessionEntry } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import { askForAthleteDays, askForAthleteSessions, askForSession, type Answer, type RecordedSession } from '../live/recorded.ts';

/** One recorded session, folded as far as it goes. */
export interface FoldedSession {
  readonly recorded: RecordedSession;
  readonly ledger: Ledger;
  readonly entry: SessionEntry;
  readonly view: MoundView;
  readonly shown: SessionView;
}

/** Everything that is recorded of an athlete. */
export interface AthleteRecord {
  readonly athlete: Athlete;
  /** Newest first. */
  readonly sessions: readonly FoldedSession[];
  readonly days: AthleteDays;
}

/** Folds a recorded session with the folds that made it live; null where its facts do not open it. */
export function foldedSession(recorded: RecordedSession): FoldedSession | null {
  const ledger = recorded.facts.reduce(foldFact, recorded.carry);
  const view = moundView(ledger, recorded.session);
  const entry = ledger.sessions[recorded.session];
  return entry === undefined || view.session === null ? null : { recorded, ledger, entry, view, shown: view.session };
}

/** Asks for all sessions of an athlete; the first answer that is none is the answer. */
export async function askForRecord(athlete: string): Promise<Answer<AthleteRecord>> {
  const [listed, days] = await Promise.all([askForAthleteSessions(athlete), askForAthleteDays(athlete)]);
  if (listed.kind !== 'answer') return listed;
  if (days.kind !== 'answer') return days;
  const answers = await Promise.all(listed.value.map(({ id }) => askForSession(id)));
  const none = answers.find((answer) => answer.kind !== 'answer');
  if (none !== undefined) return none;
  const sessions = answers.flatMap((answer) => (answer.kind === 'answer' ? (foldedSession(answer.value) ?? []) : []));
  const newest = sessions[0];
  return newest === undefined ? { kind: 'silent' } : { kind: 'answer', value: { athlete: newest.entry.athlete, sessions, days: days.value } };
}

/** The record after one of its sessions has grown. */
export function withSession(record: AthleteRecord, grown: RecordedSession, days: AthleteDays): AthleteRecord {
  const folded = foldedSession(grown);
  return { ...record, days, sessions: record.sessions.map((one) => (one.recorded.session === grown.session ? (folded ?? one) : one)) };
}

/** The ledger that holds a session; null for one that is not of this athlete. */
export function ledgerOf({ sessions }: AthleteRecord, session: string): Ledger | null {
  return sessions.find(({ entry }) => entry.id === session)?.ledger ?? null;
}
