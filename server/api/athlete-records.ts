import { sessionIn, type Ledger } from '../../core/session/ledger.ts';
import { sessionRecord, type SessionRecord } from '../../core/session/session-record.ts';

/**
 * All sessions of one athlete as they stand, over all mounds, newest first; null for somebody nobody has heard of.
 * As they were measured go along only the throws that a comparison holds: a long history is a hundred times the rest.
 */
export function athleteRecords(ledgers: readonly Ledger[], athlete: string): SessionRecord[] | null {
  const visited = ledgers.filter((ledger) => ledger.athletes[athlete] !== undefined);
  if (visited.length === 0) return null;
  const own = visited.flatMap((ledger) => ledger.order.flatMap((id) => {
    const session = sessionIn(ledger, id);
    return session?.athlete.id === athlete ? [{ ledger, id, openedAtMs: session.openedAtMs }] : [];
  }));
  const compared = new Set(visited.flatMap(({ athletes }) => athletes[athlete]!.plans.comparisons.flatMap(({ days }) => days.map(({ session }) => session))));
  return own.sort((a, b) => b.openedAtMs - a.openedAtMs).flatMap(({ ledger, id }) => sessionRecord(ledger, id, compared.has(id)) ?? []);
}
