import type { ArmElsewhere } from '../facts/arm-says.ts';
import type { CoachSays } from '../facts/coach.ts';
import type { Decision } from '../facts/decision-says.ts';
import type { Erased } from '../facts/erased-says.ts';
import type { Fact } from '../facts/fact.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { usualDecision } from '../flight/decision-point.ts';
import { NOTHING_ELSEWHERE } from './brought.ts';
import { comparedDays } from './compared-days.ts';
import type { ComparedDay } from './found-better.ts';
import { earlierBaselines } from './fastballs.ts';
import { importedSession, importedThrow, withdrawnImport } from './fold-imported.ts';
import { corrected, measured, moved, retag } from './fold-throws.ts';
import { withMore } from './gathered.ts';
import { judgingOf } from './judged.ts';
import { sessionIn, thrownBy, unclaimedThrough, withSession, type AthleteEntry, type Ledger, type SessionEntry } from './ledger.ts';
import { letterOf } from './letter.ts';
import { dayIn } from './local-day.ts';
import { heardElsewhere, newestBaselines, newestTargets, numbersGiven } from './other-mounds.ts';
import { plansTogether, type PlansKnown } from './plans-known.ts';
import { newAthlete } from './new-athlete.ts';
import { comparisonOf, NO_PLANS, type Planned, plannedAfter, plannedAtOpening, plansAfter, type PlansBrought, type PlanSays } from './planned.ts';
import type { StageTarget, TargetsByStage } from './targets.ts';
import { daysBefore } from './throwing-days.ts';
import { armTogether, NOTHING_BROUGHT, toldAfter, toldAtOpening, type ToldSays } from './told.ts';
import { triedHere } from './tried-here.ts';
import { comfortAfter, workedIn } from './worked-here.ts';

/** The next state of a mound after one fact. Pure: going back means folding again from the start. */
export function foldFact(ledger: Ledger, fact: Fact): Ledger {
  const { said } = fact;
  if (said.kind === 'throw-measured') return measured(ledger, fact, said);
  const next: Ledger = { ...ledger, place: fact.place, atMs: fact.atMs };
  switch (said.kind) {
    case 'throw-corrected': return corrected(next, said);
    case 'session-opened': return opened(next, fact, said);
    case 'mound-passed': return sessionIn(ledger, said.session) === undefined ? next : { ...next, active: said.session, generation: next.generation + 1 };
    case 'throws-moved': return moved(next, said);
    case 'throws-claimed': return moved(next, { session: said.session, places: unclaimedThrough(ledger, said.through) });
    case 'throws-tagged': return retag(next, said, (tags) => ({ ...tags, intent: said.intent, trial: said.trial, taggedLater: said.intent !== null }));
    case 'throws-excluded': return retag(next, said, (tags) => ({ ...tags, excluded: said.reason }));
    case 'throws-restored': return retag(next, said, (tags) => ({ ...tags, excluded: null }));
    case 'throw-bookmarked': return retag(next, { session: said.session, places: [said.place] }, (tags) => ({ ...tags, bookmarked: said.on }));
    case 'air-set': return { ...next, air: { atMs: fact.atMs, air: said.air } };
    case 'arm-elsewhere': return elsewhere(next, said);
    case 'athlete-elsewhere': return heardElsewhere(next, said);
    case 'erased': return erased(next, said);
    case 'session-imported': return importedSession(next, fact, said);
    case 'throw-imported': return importedThrow(next, fact, said);
    case 'import-withdrawn': return withdrawnImport(next, said);
    case 'arm-reported':
    case 'pain-answered':
    case 'comfort-said':
    case 'feedback-set':
    case 'throw-guessed': return told(next, fact, said);
    case 'gate-set':
    case 'gate-passed':
    case 'count-planned':
    case 'observation-ticked':
    case 'comparison-opened':
    case 'comparison-continued': return planned(next, fact, said);
    case 'decision-set': return decided(next, fact, said);
    case 'session-closed':
    case 'stage-set':
    case 'intent-set':
    case 'trial-begun':
    case 'trial-resumed':
    case 'trial-left':
    case 'zone-set':
    case 'zone-removed':
    case 'baseline-renewed':
    case 'note-written':
    case 'note-withdrawn': return inSession(next, fact, said);
  }
}

function opened(ledger: Ledger, fact: Fact, said: Extract<CoachSays, { kind: 'session-opened' }>): Ledger {
  const { session: id, athlete, timeZone, stage, distanceM, effort } = said;
  const known = ledger.athletes[athlete.id];
  const others = ledger.otherMounds[athlete.id] ?? NOTHING_ELSEWHERE;
  const own = earlierBaselines(ledger, athlete.id);
  const session: SessionEntry = {
    id, athlete, timeZone, stage, distanceM, effort,
    openedPlace: fact.place,
    openedAtMs: fact.atMs,
    openedDay: dayIn(timeZone, fact.atMs),
    closedAtMs: null,
    intent: null,
    trial: null,
    trials: [],
    targets: newestTargets(known?.targets ?? {}, others.targets),
    decision: decisionOf(plansTogether(known?.plans ?? NO_PLANS, others.plans)),
    notes: [],
    earlier: newestBaselines(own, others.baselines),
    baselinesGiven: numbersGiven(own, others.baselinesGiven),
    renewals: [],
    told: toldAtOpening(daysBefore(ledger, athlete.id, dayIn(timeZone, fact.atMs)), armTogether(known?.arm ?? NOTHING_BROUGHT, ledger.elsewhere[athlete.id] ?? NOTHING_BROUGHT)),
    planned: plannedAtOpening(known?.plans ?? NO_PLANS, others),
  };
  return {
    ...ledger,
    active: id,
    generation: ledger.generation + 1,
    order: [...ledger.order, id],
    ...withSession(ledger, session),
    athletes: { ...ledger.athletes, [athlete.id]: { ...(known ?? newAthlete(athlete)), athlete } },
  };
}

/** For everybody else the mound goes on as it did: what took it from them still took it, and is nobody's. */
function erased(ledger: Ledger, { tookMound, seenBy }: Erased): Ledger {
  const seen = seenBy === null ? ledger : { ...ledger, source: seenBy };
  return tookMound ? { ...seen, active: null, generation: ledger.generation + 1 } : seen;
}

/** Changes a session together with what its athlete brings to the next one. */
function withAthlete(ledger: Ledger, id: string, change: (session: SessionEntry, athlete: AthleteEntry) => { readonly session: SessionEntry; readonly athlete: AthleteEntry }): Ledger {
  const session = sessionIn(ledger, id);
  const athlete = session === undefined ? undefined : ledger.athletes[session.athlete.id];
  if (session === undefined || athlete === undefined) return ledger;
  const after = change(session, athlete);
  return { ...ledger, ...withSession(ledger, after.session), athletes: { ...ledger.athletes, [session.athlete.id]: after.athlete } };
}

/** Pain and soreness go with the athlete into the next session. */
function told(ledger: Ledger, fact: Fact, said: ToldSays): Ledger {
  return withAthlete(ledger, said.session, (session, athlete) => {
    const after = toldAfter(session, fact, said);
    const { pain, soreness, answeredAtMs } = after;
    return { session: { ...session, told: after }, athlete: { ...athlete, arm: { ...athlete.arm, pain, soreness, answeredAtMs } } };
  });
}

/** Told by the server: it holds for the athlete's next session here, and at once for the session named. */
function elsewhere(ledger: Ledger, said: ArmElsewhere): Ledger {
  const { athlete: id, days, pain, soreness, answeredAtMs } = said;
  const next: Ledger = { ...ledger, elsewhere: { ...ledger.elsewhere, [id]: { days, pain, soreness, answeredAtMs } } };
  if (said.session === null) return next;
  return withAthlete(next, said.session, (session, athlete) => {
    const standing = armTogether(session.told, said);
    return { session: { ...session, told: { ...session.told, ...standing } }, athlete: { ...athlete, arm: { ...athlete.arm, ...standing } } };
  });
}

/** Gates, the day's own most and comparisons go with the athlete into the next session. */
function planned(ledger: Ledger, fact: Fact, said: PlanSays): Ledger {
  return withAthlete(ledger, said.session, (session, athlete) => {
    const after = plannedAfter(session.planned, session, fact, said);
    return { session: { ...session, planned: after }, athlete: { ...athlete, plans: withCompared(ledger, plansAfter(athlete.plans, after), after, said) } };
  });
}

/** Where the gap is told holds for the whole session, its earlier throws too, and goes with the athlete into the next one. */
function decided(ledger: Ledger, { atMs }: Fact, { session: id, beforeS, basis }: Extract<CoachSays, { kind: 'decision-set' }>): Ledger {
  const decision = { beforeS, basis };
  return withAthlete(ledger, id, (session, athlete) => ({ session: { ...session, decision }, athlete: { ...athlete, plans: { ...athlete.plans, decision: { ...decision, saidAtMs: atMs } } } }));
}

function decisionOf({ decision }: PlansKnown): Decision {
  if (decision === null) return usualDecision;
  const { saidAtMs: _, ...said } = decision;
  return said;
}

/** A day that a comparison takes in after its session was closed is kept as it stands. */
function withCompared(ledger: Ledger, plans: PlansBrought, planned: Planned, said: PlanSays): PlansBrought {
  if (said.kind !== 'comparison-opened' && said.kind !== 'comparison-continued') return plans;
  const day = said.kind === 'comparison-opened' ? said : said.day;
  const entry = comparisonOf(planned, said.k);
  const isClosed = (sessionIn(ledger, day.session)?.closedAtMs ?? null) !== null;
  return entry === undefined || !isClosed ? plans : { ...plans, compared: [...plans.compared, ...comparedDays(ledger, entry, entry.days.at(-1)!)] };
}

/** What a session that closes has to say to the comparisons that hold it, wherever they were opened. */
function comparedIn(ledger: Ledger, { id, athlete }: SessionEntry): ComparedDay[] {
  const plans = plansTogether(ledger.athletes[athlete.id]?.plans ?? NO_PLANS, (ledger.otherMounds[athlete.id] ?? NOTHING_ELSEWHERE).plans);
  return plans.comparisons.flatMap((entry) => entry.days.filter(({ session }) => session === id).flatMap((day) => comparedDays(ledger, entry, day)));
}

/** How its trials did, and what they have shown of the families, stays with the athlete as it stood when the session closed. */
function plansAtClosing(ledger: Ledger, session: SessionEntry, plans: PlansBrought): PlansBrought {
  const thrown = thrownBy(ledger, session.id);
  const judging = judgingOf(session, thrown);
  const entries = thrown.flat();
  return {
    ...plans,
    worked: withMore(plans.worked, workedIn(session, entries, judging)),
    compared: [...plans.compared, ...comparedIn(ledger, session)],
    comfort: comfortAfter(plans.comfort, session),
    tried: withMore(plans.tried, triedHere(session, entries, judging)),
  };
}

type SessionSays = Extract<CoachSays, { kind: 'session-closed' | 'stage-set' | 'intent-set' | 'trial-begun' | 'trial-resumed' | 'trial-left' | 'zone-set' | 'zone-removed' | 'baseline-renewed' | 'note-written' | 'note-withdrawn' }>;

function inSession(ledger: Ledger, fact: Fact, said: SessionSays): Ledger {
  const changed = withAthlete(ledger, said.session, (session, athlete) => ({ session: sessionAfter(session, fact, said), athlete: athleteAfter(ledger, session, athlete, fact, said) }));
  return said.kind === 'session-closed' && ledger.active === said.session ? { ...changed, active: null } : changed;
}

function athleteAfter(ledger: Ledger, session: SessionEntry, athlete: AthleteEntry, { atMs }: Fact, said: SessionSays): AthleteEntry {
  switch (said.kind) {
    case 'session-closed': return session.closedAtMs === null ? { ...athlete, plans: plansAtClosing(ledger, session, athlete.plans) } : athlete;
    case 'zone-set': return { ...athlete, targets: withTarget(athlete.targets, session.stage, said, atMs) };
    case 'zone-removed': return { ...athlete, targets: withTarget(athlete.targets, session.stage, NO_TARGET, atMs) };
    default: return athlete;
  }
}

const NO_TARGET = { zone: null, speedBand: null } as const;

/** A target holds for the stage in which it was said, here and in the athlete's next sessions. */
function withTarget(targets: TargetsByStage, stage: Stage, { zone, speedBand }: Pick<StageTarget, 'zone' | 'speedBand'>, saidAtMs: number): TargetsByStage {
  return { ...targets, [stage]: { zone, speedBand, saidAtMs } };
}

function sessionAfter(session: SessionEntry, fact: Fact, said: SessionSays): SessionEntry {
  switch (said.kind) {
    case 'session-closed': return { ...session, closedAtMs: session.closedAtMs ?? fact.atMs };
    case 'stage-set': return { ...session, stage: said.stage, distanceM: said.distanceM, effort: said.effort };
    case 'intent-set': return { ...session, intent: said.intent };
    case 'trial-begun': {
      const letter = letterOf(session.trials.length);
      return { ...session, intent: said.intent, trial: letter, trials: [...session.trials, { letter, intent: said.intent, grip: said.grip, cue: said.cue, ...(said.family === undefined ? {} : { family: said.family }) }] };
    }
    case 'trial-resumed': {
      const trial = session.trials.find(({ letter }) => letter === said.trial);
      return trial === undefined ? session : { ...session, intent: trial.intent, trial: trial.letter };
    }
    case 'trial-left': return { ...session, trial: null };
    case 'zone-set': return { ...session, targets: withTarget(session.targets, session.stage, said, fact.atMs) };
    case 'zone-removed': return { ...session, targets: withTarget(session.targets, session.stage, NO_TARGET, fact.atMs) };
    case 'baseline-renewed': return { ...session, renewals: [...session.renewals, { stage: said.stage, place: fact.place }] };
    case 'note-written': return { ...session, notes: [...session.notes, { written: fact.place, atMs: fact.atMs, text: said.text, place: said.place }] };
    case 'note-withdrawn': return { ...session, notes: session.notes.filter(({ written }) => written !== said.note) };
  }
}
