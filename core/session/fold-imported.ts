import type { Fact } from '../facts/fact.ts';
import { runOf } from '../facts/import-run.ts';
import type { ImportWithdrawn, SessionImported, ThrowImported } from '../facts/import-says.ts';
import { usualDecision } from '../flight/decision-point.ts';
import { sessionIn, throwsOf, withEntry, withoutKey, withSession, type Ledger, type SessionEntry, type Tags } from './ledger.ts';
import { letterOf } from './letter.ts';
import { dayIn } from './local-day.ts';
import { NOTHING_ELSEWHERE } from './brought.ts';
import { newAthlete } from './new-athlete.ts';
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
  const known = ledger.athletes[athlete.id] ?? newAthlete(athlete);
  return { ...ledger, order: [...ledger.order, id], ...withSession(ledger, session), athletes: { ...ledger.athletes, [athlete.id]: known } };
}

/** A throw out of a file belongs to its session, whoever has the mound; where that session was erased, to nobody. What it was is what was meant from then on. */
export function importedThrow(ledger: Ledger, { place }: Fact, said: ThrowImported): Ledger {
  const { source, body } = said;
  const owner = sessionIn(ledger, said.session);
  const meant = owner === undefined || (owner.intent === said.intent && owner.trial === said.trial);
  const thrown = meant ? ledger : { ...ledger, ...withSession(ledger, { ...owner, intent: said.intent, trial: said.trial }) };
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

/**
 * An imported session is there no longer, with the throws that its file brought: nothing counts them from here on. Throws that were
 * moved on to another session are that one's, and measured throws that were moved into this one are nobody's again. What a session
 * took along from it when it opened stays as it was then.
 */
export function withdrawnImport(ledger: Ledger, { session: id }: ImportWithdrawn): Ledger {
  const session = sessionIn(ledger, id);
  if (session?.imported === undefined) return ledger;
  const run = runOf(session.imported.file);
  const strangers = throwsOf(ledger, id).filter(({ source }) => source.run !== run);
  const left = strangers.reduce((before, entry) => withEntry(before, { ...entry, session: null }, entry), ledger);
  const athlete = left.athletes[session.athlete.id]!;
  const plans = { ...athlete.plans, compared: athlete.plans.compared.filter((day) => day.session !== id) };
  return {
    ...left,
    order: left.order.filter((one) => one !== id),
    closed: withoutKey(left.closed, id),
    throws: withoutKey(left.throws, id),
    away: withoutKey(left.away, id),
    athletes: { ...left.athletes, [session.athlete.id]: { ...athlete, plans } },
  };
}
