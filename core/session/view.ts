import { FASTBALLS_NEEDED, type FastballBaseline } from '../coaching/baseline.ts';
import { fatigueSign } from '../coaching/fatigue.ts';
import { honestArm } from '../coaching/honest-arm.ts';
import { triedOverDays } from '../coaching/tried-over-days.ts';
import type { BaselineState, MoundView, SessionView, ThrowView, TrialView, UnexplainedReading } from '../facts/views.ts';
import { SCIENCE_VERSION } from './analyse.ts';
import { armCareView, armTalkView, comfortView, feedbackView } from './coaching-view.ts';
import { fastballsIn } from './fastballs.ts';
import { judgingOf, ownBaselines } from './judged.ts';
import { openSessions, sessionIn, thrownBy, type Ledger, type SessionEntry } from './ledger.ts';
import { nextDayView } from './next-day-view.ts';
import { throwsPlanned } from './planned.ts';
import { progressView } from './progress-view.ts';
import { rounded } from './quanta.ts';
import { seamEffectView } from './seam-effect-view.ts';
import { driftOf, NO_STAGE } from './stage-sums.ts';
import { sumsOf, type Sums } from './sums.ts';
import { speedBandIn, zoneIn } from './targets.ts';
import { countAfter, countOf } from './thrown.ts';
import { throwViews, unclaimedViews } from './throws.ts';
import { windowsOf } from './windows.ts';
import { NO_WORK, presentWork, workKey } from './work-sums.ts';

/** Unclaimed throws that a view lists, the newest; a mound that nobody watched can have thousands. */
const UNCLAIMED_LISTED = 50;

/** Throws of a session that a view shows, the newest; what the others say is in its sums. */
const THROWS_SHOWN = 200;

/**
 * What a screen shows of a mound: the given session, or with null the one that has the mound, or the last that had it.
 * Every number is rounded to its quantum. A session unknown to the ledger gives a view without a session.
 * @param most throws shown, the newest
 */
export function moundView(ledger: Ledger, session: string | null, most = THROWS_SHOWN): MoundView {
  const entry = sessionIn(ledger, session ?? ledger.active ?? lastClosed(ledger) ?? '');
  const shown = entry === undefined ? null : sessionView(ledger, entry, most);
  const head = rounded<MoundView>({
    mound: ledger.mound,
    place: ledger.place,
    atMs: ledger.atMs,
    generation: ledger.generation,
    scienceVersion: SCIENCE_VERSION,
    session: shown?.session ?? null,
    openSessions: openSessions(ledger),
    source: ledger.source,
    air: ledger.air,
    unclaimedCount: countOf(ledger.unclaimed),
    unclaimedSince: countAfter(ledger.unclaimed, shown?.throws.at(-1)?.place ?? 0),
    throws: [],
    unclaimed: [],
  });
  // Each throw is rounded once and for all, so it is put in behind the rounding.
  return { ...head, throws: shown?.throws ?? [], unclaimed: unclaimedViews(ledger.unclaimed, UNCLAIMED_LISTED) };
}

/**
 * Works out, and remembers, what the throws of whoever has the mound come to, for a view that is made of the same ledger later:
 * most of what that costs.
 */
export function prepareView(ledger: Ledger): void {
  const entry = ledger.active === null ? undefined : sessionIn(ledger, ledger.active);
  if (entry === undefined) return;
  const thrown = thrownBy(ledger, entry.id);
  const judging = judgingOf(entry, thrown);
  sumsOf(entry, thrown, judging);
  throwViews(thrown, THROWS_SHOWN, judging, entry.decision);
}

/** Nobody has the mound once the session that had it is closed. Another that is open waits to be passed to: it must not look as if it were thrown in; one out of a file never had it. */
function lastClosed({ order, closed }: Ledger): string | undefined {
  return order.reduce<string | undefined>((last, id) => (closedAt(closed[id]) >= closedAt(closed[last ?? '']) ? id : last), undefined);
}

function closedAt(session: SessionEntry | undefined): number {
  return session === undefined || session.imported !== undefined ? -Infinity : (session.closedAtMs ?? -Infinity);
}

function sessionView(ledger: Ledger, entry: SessionEntry, most: number): { session: SessionView; throws: ThrowView[] } {
  const thrown = thrownBy(ledger, entry.id);
  const judging = judgingOf(entry, thrown);
  const sums = sumsOf(entry, thrown, judging);
  const throws = throwViews(thrown, most, judging, entry.decision);
  const trials = trialViews(entry, sums, throws.at(-1)?.unexplained ?? null);
  const { id, athlete, timeZone, openedAtMs, closedAtMs, stage, distanceM, effort, intent, decision, notes, imported } = entry;
  const [zone, speedBand] = [zoneIn(entry, stage), speedBandIn(entry, stage)];
  const current = sums.stages[stage] ?? NO_STAGE;
  const worked = presentWork(sums.works, entry);
  const care = armCareView(entry, sums.days);
  const own = ownBaselines(judging, stage);
  // What only sessions out of a file have is put in apart: spread into so many names it would make every view slow.
  const session: SessionView = {
    id, athlete, timeZone, openedAtMs, closedAtMs, stage, distanceM, effort, intent, zone, speedBand, decision, notes, trials,
    active: ledger.active === id,
    trial: trials.find(({ letter }) => letter === entry.trial) ?? null,
    baseline: baselineState(own, fastballsIn(thrown, entry)[stage]?.count ?? 0, entry),
    counts: { all: countOf(thrown), stage: current.count, trial: worked.count },
    windows: windowsOf(worked.window, worked.newest, zone !== null),
    feedback: feedbackView(entry.told, sums.feedback),
    armCare: care,
    armTalk: armTalkView(entry.told, thrown),
    comfort: comfortView(entry),
    progress: progressView(entry, sums.works, care),
    honestArm: honestArm({ changeups: worked.bodies, fastballs: current.bodies, fastballSpeeds: current.speeds }),
    fatigue: fatigueSign(current.fatigue),
    baselineDrift: driftOf(current, own),
    nextDaySet: nextDayView(entry, sums, care),
    plannedThrows: throwsPlanned(entry.planned, care.day),
    triedBefore: triedOverDays(entry.planned.tried.flat().flatMap((one) => (one.stage === stage ? [[one.tried]] : []))),
    observations: entry.planned.observations,
  };
  return { throws, session: imported === undefined ? session : { ...session, imported } };
}

function trialViews({ trials, stage }: SessionEntry, sums: Sums, newest: UnexplainedReading | null): TrialView[] {
  return trials.map((trial) => {
    const { thrown, excluded } = sums.trials[trial.letter] ?? { thrown: 0, excluded: 0 };
    const { seams } = sums.works[workKey(stage, { trial: trial.letter, intent: null })] ?? NO_WORK;
    return { ...trial, count: thrown, excluded, seamEffect: seamEffectView(seams, newest) };
  });
}

function baselineState(own: readonly FastballBaseline[], fastballs: number, session: SessionEntry): BaselineState {
  const newest = own.at(-1);
  if (newest !== undefined) return baselineView(newest, 'this-session');
  const earlier = session.earlier[session.stage];
  if (earlier !== undefined) return baselineView(earlier, 'earlier');
  return { kind: 'forming', have: fastballs, need: FASTBALLS_NEEDED };
}

function baselineView(baseline: FastballBaseline, origin: 'this-session' | 'earlier'): BaselineState {
  const { sincePlace: _, ...shown } = baseline;
  return { kind: 'baseline', origin, ...shown };
}
