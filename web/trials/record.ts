import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { AthleteDays } from '../../core/facts/wire.ts';
import type { Ledger, SessionEntry } from '../../core/session/ledger.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';
import { askForAthleteDays, askForAthleteRecords, type Answer } from '../live/recorded.ts';

/** One session as it stands, its state and its view side by side. */
export interface FoldedSession {
  readonly recorded: Pick<SessionRecord, 'session' | 'mound' | 'place'>;
  /** Of this session alone. */
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

/** A session of a record; null where the record does not hold what it names. */
export function foldedSession({ session, mound, place, ledger, view }: SessionRecord): FoldedSession | null {
  const entry = ledger.sessions[session];
  return entry === undefined || view.session === null ? null : { recorded: { session, mound, place }, ledger, entry, view, shown: view.session };
}

/** Asks for all sessions of an athlete; the first answer that is none is the answer. */
export async function askForRecord(athlete: string): Promise<Answer<AthleteRecord>> {
  const [records, days] = await Promise.all([askForAthleteRecords(athlete), askForAthleteDays(athlete)]);
  if (records.kind !== 'answer') return records;
  if (days.kind !== 'answer') return days;
  const sessions = records.value.flatMap((record) => foldedSession(record) ?? []);
  const newest = sessions[0];
  return newest === undefined ? { kind: 'silent' } : { kind: 'answer', value: { athlete: newest.entry.athlete, sessions, days: days.value } };
}

/** The record after one of its sessions has grown. */
export function withSession(record: AthleteRecord, grown: SessionRecord, days: AthleteDays): AthleteRecord {
  const folded = foldedSession(grown);
  return { ...record, days, sessions: record.sessions.map((one) => (one.recorded.session === grown.session ? (folded ?? one) : one)) };
}

/** The ledger that holds a session; null for one that is not of this athlete. */
export function ledgerOf({ sessions }: AthleteRecord, session: string): Ledger | null {
  return sessions.find(({ entry }) => entry.id === session)?.ledger ?? null;
}
