import type { MoundView } from '../facts/views.ts';
import { STAGES } from '../facts/vocabulary.ts';
import type { NumbersByStage } from './brought.ts';
import { newestBaseline } from './compared.ts';
import { emptyLedger, onlySessions, sessionIn, thrownBy, type Ledger, type SessionEntry } from './ledger.ts';
import { moundView } from './view.ts';

/** Where a session stands now: what a screen shows of it, and the state of it alone, on which a comparison over days rests. */
export interface SessionRecord {
  readonly session: string;
  readonly mound: string;
  /** Place of the newest fact of the mound that is in it. */
  readonly place: number;
  /** With all throws of the session, and without those that nobody has. */
  readonly view: MoundView;
  /** Number of the newest fastball baseline of each stage, its own or the one that it brought. */
  readonly baselines: NumbersByStage;
  /** Holds one session and nothing else of the mound; its throws only where a comparison may ask for them. */
  readonly ledger: Ledger;
}

/**
 * The record of one session of a mound; null for a session that the mound does not know.
 * @param keepThrows whether the throws go along as they were measured, which is most of what there is to send
 */
export function sessionRecord(ledger: Ledger, session: string, keepThrows = true): SessionRecord | null {
  const entry = sessionIn(ledger, session);
  if (entry === undefined) return null;
  const { mound, place, atMs } = ledger;
  const thrown = thrownBy(ledger, session);
  const own: Ledger = { ...ledger, throws: { [session]: thrown } };
  return {
    session, mound, place, baselines: baselinesOf(own, entry),
    view: { ...moundView(own, session, Infinity), unclaimed: [] },
    ledger: { ...emptyLedger(mound), place, atMs, ...onlySessions(ledger, [session]), throws: keepThrows ? { [session]: thrown } : {} },
  };
}

function baselinesOf(ledger: Ledger, entry: SessionEntry): NumbersByStage {
  return Object.fromEntries(STAGES.flatMap((stage) => {
    const newest = newestBaseline(ledger, entry, stage);
    return newest === null ? [] : [[stage, newest]];
  }));
}
