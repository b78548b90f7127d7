import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { AthleteDays } from '../../core/facts/wire.ts';
import { sessionIn, type Ledger, type SessionEntry } from '../../core/session/ledger.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';

/** One session as it stands, its state and its view side by side. */
export interface FoldedSession {
  readonly recorded: Pick<SessionRecord, 'session' | 'mound' | 'place' | 'baselines'>;
  /** Of this session alone, with its throws where a comparison holds them. */
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
export function foldedSession({ session, mound, place, baselines, ledger, view }: SessionRecord): FoldedSession | null {
  const entry = sessionIn(ledger, session);
  return entry === undefined || view.session === null ? null : { recorded: { session, mound, place, baselines }, ledger, entry, view, shown: view.session };
}

/** Sessions that a grown one compares with and whose throws are not at hand yet: without them a verdict would leave out their days. */
export function sessionsLacking({ sessions }: AthleteRecord, grown: SessionRecord): readonly string[] {
  const days = sessionIn(grown.ledger, grown.session)?.planned.comparisons.flatMap((one) => one.days.map(({ session }) => session)) ?? [];
  const lacking = sessions.filter(({ ledger, view }) => view.throws.length > 0 && Object.keys(ledger.throws).length === 0).map(({ entry }) => entry.id);
  return lacking.filter((session) => session !== grown.session && days.includes(session));
}

/** The record after some of its sessions have grown. */
export function withSessions(record: AthleteRecord, grown: readonly SessionRecord[], days: AthleteDays): AthleteRecord {
  const folded = new Map(grown.map((one) => [one.session, foldedSession(one)]));
  return { ...record, days, sessions: record.sessions.map((one) => folded.get(one.entry.id) ?? one) };
}

/** The ledger that holds a session; null for one that is not of this athlete. */
export function ledgerOf({ sessions }: AthleteRecord, session: string): Ledger | null {
  return sessions.find(({ entry }) => entry.id === session)?.ledger ?? null;
}
