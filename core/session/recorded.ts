import type { Fact } from '../facts/fact.ts';
import type { SessionListing } from '../facts/wire.ts';
import { earlierBaselines } from './fastballs.ts';
import { foldFact } from './fold.ts';
import { emptyLedger, throwIn, thrownBy, throwsOf, type AthleteEntry, type Ledger, type ThrowEntry } from './ledger.ts';
import { inRuns, throwAt } from './thrown.ts';
import { daysOf, lastDays, tagsOf } from './throwing-days.ts';

/** The sessions of a mound, newest first. */
export function listSessions(ledger: Ledger): SessionListing[] {
  return ledger.order.flatMap((id) => {
    const session = ledger.sessions[id];
    if (session === undefined) return [];
    const tags = throwsOf(ledger, id).flatMap((entry) => entry.tags[id] ?? []);
    return [{
      id,
      mound: ledger.mound,
      athleteId: session.athlete.id,
      athleteName: session.athlete.name,
      timeZone: session.timeZone,
      openedAtMs: session.openedAtMs,
      closedAtMs: session.closedAtMs,
      throws: tags.length,
      stages: [...new Set(tags.map(({ stage }) => stage))],
      trials: session.trials.map(({ letter }) => letter),
    }];
  }).reverse();
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
  const first = facts.find((fact) => touches(fact, session, () => false));
  if (first === undefined) return null;
  let ledger = emptyLedger(first.mound);
  let atOpening = ledger;
  let last = first.place;
  for (const fact of facts) {
    const before = ledger;
    if (fact === first) atOpening = before;
    ledger = foldFact(before, fact);
    if (touches(fact, session, (place) => throwIn(before, place)?.session === session) || throwAt(thrownBy(ledger, session), fact.place) !== undefined || corrects(fact, before, ledger, session)) last = fact.place;
  }
  const inside = facts.filter(({ place }) => place >= first.place && place <= last);
  return { carry: trimmed(atOpening, inside), facts: inside };
}

function touches({ said }: Fact, session: string, holds: (place: number) => boolean): boolean {
  if ('session' in said && said.session === session) return true;
  return said.kind === 'throws-moved' && said.places.some(holds);
}

function corrects({ said }: Fact, before: Ledger, after: Ledger, session: string): boolean {
  return said.kind === 'throw-corrected' && thrownBy(after, session) !== thrownBy(before, session);
}

/**
 * Only what the next facts can still need: open sessions and unclaimed throws, whatever is yet to be moved and where to (a
 * throw can leave or enter a session that is long closed), and what athletes bring along.
 */
function trimmed(ledger: Ledger, next: readonly Fact[]): Ledger {
  const moves = next.flatMap(({ said }) => (said.kind === 'throws-moved' ? [said] : []));
  const movedTo = new Set(moves.map(({ session }) => session));
  const moved = new Set(moves.flatMap(({ places }) => places));
  const open = new Set<string | null>(ledger.order.filter((id) => ledger.sessions[id]?.closedAtMs === null));
  // Until it leaves, a throw counts for whoever threw it.
  const movedFrom = new Set([...moved].map((place) => throwIn(ledger, place)?.session));
  const order = ledger.order.filter((id) => open.has(id) || movedTo.has(id) || movedFrom.has(id));
  const kept = ({ place, session }: ThrowEntry): boolean => session === null || open.has(session) || moved.has(place);
  const athletes = Object.entries(ledger.athletes).map(([id, entry]): [string, AthleteEntry] => {
    const dropped = Object.entries(ledger.throws).flatMap(([session, thrown]) => (ledger.sessions[session]?.athlete.id === id ? thrown.flat().filter((one) => !kept(one)) : [])).sort((a, b) => a.place - b.place);
    return [id, { ...entry, baselines: earlierBaselines(ledger, id), arm: { ...entry.arm, days: lastDays([...entry.arm.days, ...daysOf(tagsOf(dropped))]) } }];
  });
  return {
    ...ledger,
    order,
    sessions: Object.fromEntries(order.map((id) => [id, ledger.sessions[id]!])),
    throws: Object.fromEntries(Object.entries(ledger.throws).flatMap(([session, thrown]) => {
      const left = thrown.flat().filter(kept);
      return left.length === 0 ? [] : [[session, inRuns(left)]];
    })),
    athletes: Object.fromEntries(athletes),
  };
}
