import type { Fact } from '../facts/fact.ts';
import type { SessionImported, ThrowImported } from '../facts/import-says.ts';
import { usualDecision } from '../flight/decision-point.ts';
import { withEntry, type Ledger, type SessionEntry, type Tags } from './ledger.ts';
import { letterOf } from './letter.ts';
import { dayIn } from './local-day.ts';
import { NOTHING_ELSEWHERE } from './brought.ts';
import { NO_PLANS, plannedAtOpening } from './planned.ts';
import { NOTHING_BROUGHT, toldAtOpening } from './told.ts';

/**
 * A session out of a file stands in the log where it arrived and in time where it was thrown. It never had the mound, and
 * says nothing of plans, targets or arm to anybody: what a later session brings of it are its fastballs and its days. It brings
 * nothing along itself, because what stands before it in the log was not thrown before it.
 */
export function importedSession(ledger: Ledger, fact: Fact, said: SessionImported): Ledger {
  const { session: id, athlete, timeZone, stage, distanceM, effort, openedAtMs, closedAtMs, times, file } = said;
  const session: SessionEntry = {
    id, athlete, timeZone, stage, distanceM, effort, openedAtMs, closedAtMs,
    openedPlace: fact.place,
    openedDay: dayIn(timeZone, openedAtMs),
    intent: null,
    trial: null,
    trials: said.trials.map(({ intent, cue }, index) => ({ letter: letterOf(index), intent, grip: null, cue })),
    targets: {},
    decision: usualDecision,
    notes: [],
    earlier: {},
    baselinesGiven: {},
    renewals: [],
    told: toldAtOpening([], NOTHING_BROUGHT),
    planned: plannedAtOpening(NO_PLANS, NOTHING_ELSEWHERE),
    imported: { file, times, atMs: fact.atMs, by: fact.by },
  };
  // Somebody who is known is known by what was last said here, not by what a file says of earlier days.
  const known = ledger.athletes[athlete.id] ?? { athlete, targets: {}, baselines: {}, arm: NOTHING_BROUGHT, plans: NO_PLANS };
  return { ...ledger, order: [...ledger.order, id], sessions: { ...ledger.sessions, [id]: session }, athletes: { ...ledger.athletes, [athlete.id]: known } };
}

/** A throw out of a file belongs to its session, whoever has the mound; where that session was erased, to nobody. What it was is what was meant from then on. */
export function importedThrow(ledger: Ledger, { place }: Fact, said: ThrowImported): Ledger {
  const { source, body } = said;
  const owner = ledger.sessions[said.session];
  const meant = owner === undefined || (owner.intent === said.intent && owner.trial === said.trial);
  const thrown = meant ? ledger : { ...ledger, sessions: { ...ledger.sessions, [owner.id]: { ...owner, intent: said.intent, trial: said.trial } } };
  return withEntry(thrown, {
    place, source, body,
    atMs: source.time,
    air: null,
    corrected: false,
    session: owner?.id ?? null,
    tags: owner === undefined ? {} : { [owner.id]: tagsOf(owner, said) },
  });
}

function tagsOf({ stage, distanceM, effort, timeZone }: SessionEntry, { source, intent, trial }: ThrowImported): Tags {
  return { stage, distanceM, effort, day: dayIn(timeZone, source.time), intent, taggedLater: false, trial, excluded: null };
}
