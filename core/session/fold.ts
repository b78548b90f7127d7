import type { ArmElsewhere } from '../facts/arm-says.ts';
import type { CoachSays } from '../facts/coach.ts';
import type { DeviceSays, Fact } from '../facts/fact.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { usualDecision } from '../flight/decision-point.ts';
import { NOTHING_ELSEWHERE } from './brought.ts';
import { earlierBaselines } from './fastballs.ts';
import { stageBaselines } from './judged.ts';
import { throwsOf, unclaimedThrough, type Ledger, type SessionEntry, type Tags, type ThrowEntry } from './ledger.ts';
import { dayIn } from './local-day.ts';
import { heardElsewhere, newestBaselines, newestTargets, numbersGiven } from './other-mounds.ts';
import { NO_PLANS, plannedAfter, plannedAtOpening, plansAfter, type PlanSays } from './planned.ts';
import type { StageTarget, TargetsByStage } from './targets.ts';
import { daysBefore } from './throwing-days.ts';
import { armTogether, NOTHING_BROUGHT, toldAfter, toldAtOpening, type ToldSays } from './told.ts';
import { triedHere } from './tried-here.ts';
import { comfortAfter, workedIn } from './worked-here.ts';

/** The next state of a mound after one fact. Pure: going back means folding again from the start. */
export function foldFact(ledger: Ledger, fact: Fact): Ledger {
  const next: Ledger = { ...ledger, place: fact.place, atMs: fact.atMs };
  const { said } = fact;
  switch (said.kind) {
    case 'throw-measured': return measured(next, fact, said);
    case 'throw-corrected': return corrected(next, said);
    case 'session-opened': return opened(next, fact, said);
    case 'mound-passed': return ledger.sessions[said.session] === undefined ? next : { ...next, active: said.session, generation: next.generation + 1 };
    case 'throws-moved': return moved(next, said);
    case 'throws-claimed': return moved(next, { session: said.session, places: unclaimedThrough(ledger, said.through) });
    case 'throws-tagged': return retag(next, said, (tags) => ({ ...tags, intent: said.intent, trial: said.trial, taggedLater: true }));
    case 'throws-excluded': return retag(next, said, (tags) => ({ ...tags, excluded: said.reason }));
    case 'throws-restored': return retag(next, said, (tags) => ({ ...tags, excluded: null }));
    case 'air-set': return { ...next, air: { atMs: fact.atMs, air: said.air } };
    case 'arm-elsewhere': return elsewhere(next, said);
    case 'athlete-elsewhere': return heardElsewhere(next, said);
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
    case 'decision-set': return decided(next, said);
    case 'session-closed':
    case 'stage-set':
    case 'intent-set':
    case 'trial-begun':
    case 'trial-resumed':
    case 'zone-set':
    case 'baseline-renewed':
    case 'note-written': return inSession(next, fact, said);
  }
}

function measured(ledger: Ledger, fact: Fact, said: Extract<DeviceSays, { kind: 'throw-measured' }>): Ledger {
  const { source, body } = said;
  const session = ledger.active;
  const owner = session === null ? undefined : ledger.sessions[session];
  const entry: ThrowEntry = {
    place: fact.place,
    atMs: fact.atMs,
    source,
    body,
    air: ledger.air?.air ?? null,
    corrected: false,
    session,
    tags: owner === undefined ? {} : { [owner.id]: tagsOnThrowing(owner, fact.atMs) },
  };
  return {
    ...ledger,
    throws: { ...ledger.throws, [fact.place]: entry },
    source: { device: source.device, sight: source.sight, axis: source.axis },
  };
}

/** What was said carries over to the next throw; a throw enters the trial only with the trial's intent. */
function tagsOnThrowing(session: SessionEntry, atMs: number): Tags {
  const { stage, distanceM, effort, intent } = session;
  const trial = session.trials.find(({ letter }) => letter === session.trial);
  return { stage, distanceM, effort, day: dayIn(session.timeZone, atMs), intent, taggedLater: false, trial: trial !== undefined && trial.intent === intent ? trial.letter : null, excluded: null };
}

function corrected(ledger: Ledger, said: Extract<DeviceSays, { kind: 'throw-corrected' }>): Ledger {
  const { source, corrects, body } = said;
  const entry = Object.values(ledger.throws).find(({ source: { device, run, sequence } }) =>
    device === source.device && run === corrects.run && sequence === corrects.sequence);
  if (entry === undefined) return ledger;
  const mended: ThrowEntry = { ...entry, body, source: { ...source, run: entry.source.run, sequence: entry.source.sequence, time: entry.source.time }, corrected: true };
  return { ...ledger, throws: { ...ledger.throws, [entry.place]: mended } };
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
    decision: known?.decision ?? usualDecision,
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
    sessions: { ...ledger.sessions, [id]: session },
    athletes: { ...ledger.athletes, [athlete.id]: { decision: usualDecision, targets: {}, baselines: {}, arm: NOTHING_BROUGHT, plans: NO_PLANS, ...known, athlete } },
  };
}

function moved(ledger: Ledger, said: Pick<Extract<CoachSays, { kind: 'throws-moved' }>, 'session' | 'places'>): Ledger {
  const target = said.session === null ? undefined : ledger.sessions[said.session];
  if (said.session !== null && target === undefined) return ledger;
  return mapThrows(ledger, said.places, (entry) => ({
    ...entry,
    session: said.session,
    tags: target === undefined || entry.tags[target.id] !== undefined ? entry.tags : { ...entry.tags, [target.id]: tagsOnMoving(target, entry.atMs) },
  }));
}

/** What the other session had said was about somebody else's throw, so a moved throw comes untagged into the stage of its new session. */
function tagsOnMoving({ stage, distanceM, effort, timeZone }: SessionEntry, atMs: number): Tags {
  return { stage, distanceM, effort, day: dayIn(timeZone, atMs), intent: null, taggedLater: false, trial: null, excluded: null };
}

function retag(ledger: Ledger, said: { readonly session: string; readonly places: readonly number[] }, change: (tags: Tags) => Tags): Ledger {
  return mapThrows(ledger, said.places, (entry) => {
    const tags = entry.tags[said.session];
    return entry.session !== said.session || tags === undefined ? entry : { ...entry, tags: { ...entry.tags, [said.session]: change(tags) } };
  });
}

function mapThrows(ledger: Ledger, places: readonly number[], change: (entry: ThrowEntry) => ThrowEntry): Ledger {
  const throws = { ...ledger.throws };
  for (const place of places) {
    const entry = throws[place];
    if (entry !== undefined) throws[place] = change(entry);
  }
  return { ...ledger, throws };
}

/** Pain and soreness go with the athlete into the next session. */
function told(ledger: Ledger, fact: Fact, said: ToldSays): Ledger {
  const session = ledger.sessions[said.session];
  const athlete = session === undefined ? undefined : ledger.athletes[session.athlete.id];
  if (session === undefined || athlete === undefined) return ledger;
  const after = toldAfter(session, fact, said);
  const { pain, soreness, answeredAtMs } = after;
  return {
    ...ledger,
    sessions: { ...ledger.sessions, [session.id]: { ...session, told: after } },
    athletes: { ...ledger.athletes, [session.athlete.id]: { ...athlete, arm: { ...athlete.arm, pain, soreness, answeredAtMs } } },
  };
}

/** Told by the server: it holds for the athlete's next session here, and at once for the session named. */
function elsewhere(ledger: Ledger, said: ArmElsewhere): Ledger {
  const { athlete: id, days, pain, soreness, answeredAtMs } = said;
  const next: Ledger = { ...ledger, elsewhere: { ...ledger.elsewhere, [id]: { days, pain, soreness, answeredAtMs } } };
  const session = said.session === null ? undefined : ledger.sessions[said.session];
  const athlete = ledger.athletes[id];
  if (session === undefined || athlete === undefined) return next;
  const standing = armTogether(session.told, said);
  return {
    ...next,
    sessions: { ...ledger.sessions, [session.id]: { ...session, told: { ...session.told, ...standing } } },
    athletes: { ...ledger.athletes, [id]: { ...athlete, arm: { ...athlete.arm, ...standing } } },
  };
}

/** Gates, the day's own most and comparisons go with the athlete into the next session. */
function planned(ledger: Ledger, fact: Fact, said: PlanSays): Ledger {
  const session = ledger.sessions[said.session];
  const athlete = session === undefined ? undefined : ledger.athletes[session.athlete.id];
  if (session === undefined || athlete === undefined) return ledger;
  const after = plannedAfter(session.planned, session, fact, said);
  return {
    ...ledger,
    sessions: { ...ledger.sessions, [session.id]: { ...session, planned: after } },
    athletes: { ...ledger.athletes, [session.athlete.id]: { ...athlete, plans: plansAfter(athlete.plans, after) } },
  };
}

/** Where the gap is told holds for the whole session, its earlier throws too, and goes with the athlete into the next one. */
function decided(ledger: Ledger, { session: id, beforeS, basis }: Extract<CoachSays, { kind: 'decision-set' }>): Ledger {
  const session = ledger.sessions[id];
  const athlete = session === undefined ? undefined : ledger.athletes[session.athlete.id];
  if (session === undefined || athlete === undefined) return ledger;
  const decision = { beforeS, basis };
  return {
    ...ledger,
    sessions: { ...ledger.sessions, [id]: { ...session, decision } },
    athletes: { ...ledger.athletes, [session.athlete.id]: { ...athlete, decision } },
  };
}

/** How its trials did, and what they have shown of the families, stays with the athlete as it stood when the session closed. */
function withWork(ledger: Ledger, session: SessionEntry): Ledger['athletes'] {
  const athlete = ledger.athletes[session.athlete.id]!;
  const entries = throwsOf(ledger, session.id);
  const baselines = stageBaselines(session, entries);
  const worked = [...athlete.plans.worked, ...workedIn(ledger, session, entries, baselines)];
  const comfort = comfortAfter(athlete.plans.comfort, session);
  const tried = [...athlete.plans.tried, ...triedHere(session, entries, baselines)];
  return { ...ledger.athletes, [session.athlete.id]: { ...athlete, plans: { ...athlete.plans, worked, comfort, tried } } };
}

type SessionSays = Extract<CoachSays, { kind: 'session-closed' | 'stage-set' | 'intent-set' | 'trial-begun' | 'trial-resumed' | 'zone-set' | 'baseline-renewed' | 'note-written' }>;

function inSession(ledger: Ledger, fact: Fact, said: SessionSays): Ledger {
  const session = ledger.sessions[said.session];
  if (session === undefined) return ledger;
  const changed: Ledger = { ...ledger, sessions: { ...ledger.sessions, [session.id]: sessionAfter(session, fact, said) } };
  if (said.kind === 'session-closed') {
    const athletes = session.closedAtMs === null ? withWork(ledger, session) : ledger.athletes;
    return { ...changed, athletes, active: ledger.active === session.id ? null : ledger.active };
  }
  if (said.kind === 'zone-set') {
    const athlete = ledger.athletes[session.athlete.id]!;
    return { ...changed, athletes: { ...ledger.athletes, [session.athlete.id]: { ...athlete, targets: withTarget(athlete.targets, session.stage, said, fact.atMs) } } };
  }
  return changed;
}

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
    case 'zone-set': return { ...session, targets: withTarget(session.targets, session.stage, said, fact.atMs) };
    case 'baseline-renewed': return { ...session, renewals: [...session.renewals, { stage: said.stage, place: fact.place }] };
    case 'note-written': return { ...session, notes: [...session.notes, { atMs: fact.atMs, text: said.text, place: said.place }] };
  }
}

/** A … Z, AA, AB … */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
