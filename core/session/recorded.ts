import type { Fact } from '../facts/fact.ts';
import type { SessionListing } from '../facts/wire.ts';
import { earlierBaselines } from './fastballs.ts';
import { foldFact } from './fold.ts';
import { countedIn } from './counted.ts';
import { emptyLedger, onlySessions, sessionIn, throwIn, thrownBy, type AthleteEntry, type Ledger, type ThrowEntry, type Thrown } from './ledger.ts';
import { inRuns } from './thrown.ts';
import { daysOf, lastDays, placedCounts } from './throwing-days.ts';

/** The sessions of a mound, newest first. */
export function listSessions(ledger: Ledger): SessionListing[] {
  return ledger.order.flatMap((id) => {
    const session = sessionIn(ledger, id);
    if (session === undefined) return [];
    const { count, stages } = ledger.away[id] ?? countedIn(thrownBy(ledger, id), id);
    return [{
      id,
      mound: ledger.mound,
      athleteId: session.athlete.id,
      athleteName: session.athlete.name,
      timeZone: session.timeZone,
      openedAtMs: session.openedAtMs,
      closedAtMs: session.closedAtMs,
      imported: session.imported === undefined ? null : { fileName: session.imported.file.name, atMs: session.imported.atMs },
      throws: count,
      stages: [...stages],
      trials: session.trials.map(({ letter }) => letter),
    }];
  }).sort((a, b) => a.openedAtMs - b.openedAtMs).reverse();
}

/** A recorded session: the state before its first fact, and its facts. */
export interface SessionSlice {
  readonly carry: Ledger;
  readonly facts: readonly Fact[];
}

/**
 * The part of a mound's log that a session lives in: from its opening to the last fact that touches it. Throws from before
 * that were ever moved into it come with the carry. Null for a session that the facts do not open.
 */
export function sliceOf(facts: readonly Fact[], session: string): SessionSlice | null {
  const first = facts.find(({ said }) => 'session' in said && said.session === session);
  if (first === undefined) return null;
  let ledger = emptyLedger(first.mound);
  let atOpening = ledger;
  let last = first.place;
  for (const fact of facts) {
    const before = ledger;
    if (fact === first) atOpening = before;
    ledger = foldFact(before, fact);
    if (touchedBy(fact, before, ledger).includes(session)) last = fact.place;
  }
  return sliceFrom(atOpening, facts.filter(({ place }) => place >= first.place && place <= last));
}

/** The slice of a session from the state before its opening and its facts from there on. */
export function sliceFrom(atOpening: Ledger, facts: readonly Fact[]): SessionSlice {
  return { carry: trimmed(atOpening, facts), facts };
}

/** The sessions that a fact has to do with: the recording of each goes on at least up to it. */
export function touchedBy({ said }: Fact, before: Ledger, after: Ledger): readonly string[] {
  const named = 'session' in said && said.session !== null ? [said.session] : [];
  switch (said.kind) {
    case 'throw-measured': return after.active === null ? [] : [after.active];
    case 'throws-moved': return [...named, ...said.places.flatMap((moved) => throwIn(before, moved)?.session ?? [])];
    case 'throw-corrected': return Object.keys(after.throws).filter((session) => after.throws[session] !== before.throws[session]);
    default: return named;
  }
}

/**
 * Only what the next facts can still need: open sessions and unclaimed throws, whatever is yet to be moved and where to (a
 * throw can leave or enter a session that is long closed), and what the athletes of these and of the sessions to come bring along.
 */
function trimmed(ledger: Ledger, next: readonly Fact[]): Ledger {
  const moves = next.flatMap(({ said }) => (said.kind === 'throws-moved' ? [said] : []));
  const movedTo = new Set(moves.map(({ session }) => session));
  const moved = new Set(moves.flatMap(({ places }) => places));
  const open = new Set<string | null>(Object.keys(ledger.open));
  // Until it leaves, a throw counts for whoever threw it.
  const movedFrom = new Set([...moved].map((place) => throwIn(ledger, place)?.session));
  const order = ledger.order.filter((id) => open.has(id) || movedTo.has(id) || movedFrom.has(id));
  const kept = ({ place, session }: ThrowEntry): boolean => session === null || open.has(session) || moved.has(place);
  const concerned = new Set([...order.map((id) => sessionIn(ledger, id)!.athlete.id), ...next.flatMap(({ said }) => (said.kind === 'session-opened' || said.kind === 'session-imported' ? [said.athlete.id] : []))]);
  // Of those put away, only what leaves or enters has to be looked at throw by throw.
  const looked = new Set([...Object.keys(ledger.throws), ...order]);
  const thrown = [...looked].map((session): [string, Thrown] => [session, thrownBy(ledger, session)]);
  const partly = new Set(thrown.flatMap(([session, all]) => (all.flat().every(kept) ? [] : [session])));
  const athletes = Object.entries(ledger.athletes).filter(([id]) => concerned.has(id)).map(([id, entry]): [string, AthleteEntry] => {
    const isOwn = (session: string): boolean => sessionIn(ledger, session)?.athlete.id === id;
    const dropped = [
      ...placedCounts(thrown.flatMap(([session, all]) => (isOwn(session) ? all.flat().filter((one) => !kept(one)) : []))),
      ...Object.entries(ledger.away).flatMap(([session, { days }]) => (isOwn(session) && !looked.has(session) ? days : [])),
    ];
    return [id, { ...entry, baselines: earlierBaselines(ledger, id), arm: { ...entry.arm, days: lastDays([...entry.arm.days, ...daysOf(dropped)]) } }];
  });
  return {
    ...ledger,
    ...onlySessions(ledger, order, (session) => (partly.has(session.id) ? { ...session, partly: true } : session)),
    throws: Object.fromEntries(thrown.flatMap(([session, all]) => {
      const left = all.flat().filter(kept);
      return left.length === 0 ? [] : [[session, inRuns(left)]];
    })),
    away: {},
    shelf: null,
    athletes: Object.fromEntries(athletes),
  };
}
