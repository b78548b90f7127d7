import type { MoundView } from '../facts/views.ts';
import { emptyLedger, throwsOf, type Ledger } from './ledger.ts';
import { moundView } from './view.ts';

/** Where a session stands now: what a screen shows of it, and the state of it alone, on which a comparison over days rests. */
export interface SessionRecord {
  readonly session: string;
  readonly mound: string;
  /** Place of the newest fact of the mound that is in it. */
  readonly place: number;
  /** Without the throws that nobody has. */
  readonly view: MoundView;
  /** Holds one session and its throws, and nothing else of the mound. */
  readonly ledger: Ledger;
}

/** The record of one session of a mound; null for a session that the mound does not know. */
export function sessionRecord(ledger: Ledger, session: string): SessionRecord | null {
  const entry = ledger.sessions[session];
  if (entry === undefined) return null;
  const { mound, place, atMs } = ledger;
  const throws = Object.fromEntries(throwsOf(ledger, session).map((thrown) => [thrown.place, thrown]));
  return {
    session, mound, place,
    view: { ...moundView({ ...ledger, throws }, session), unclaimed: [] },
    ledger: { ...emptyLedger(mound), place, atMs, order: [session], sessions: { [session]: entry }, throws },
  };
}
