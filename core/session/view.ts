import { FASTBALLS_NEEDED, type FastballBaseline } from '../coaching/baseline.ts';
import { baselineDrift } from '../coaching/baseline-drift.ts';
import { triedOverDays } from '../coaching/tried-over-days.ts';
import type { BaselineDrift } from '../facts/advice-view.ts';
import type { BaselineState, MoundView, SessionView, ThrowView, TrialView } from '../facts/views.ts';
import { SCIENCE_VERSION } from './analyse.ts';
import { fatigueView, honestArmView } from './advice-view.ts';
import { armCareView, armTalkView, comfortView, feedbackView } from './coaching-view.ts';
import { fastballsOf } from './fastballs.ts';
import { stageBaselines } from './judged.ts';
import { openSessions, throwsOf, type Ledger, type SessionEntry, type ThrowEntry } from './ledger.ts';
import { nextDayView } from './next-day-view.ts';
import { throwsPlanned } from './planned.ts';
import { progressView } from './progress-view.ts';
import { rounded } from './quanta.ts';
import { seamEffectView } from './seam-effect-view.ts';
import { speedBandIn, zoneIn } from './targets.ts';
import { throwView, unclaimedView } from './throws.ts';
import { windowsOver } from './windows.ts';

/** Unclaimed throws that a view lists, the newest; a mound that nobody watched can have thousands. */
const UNCLAIMED_LISTED = 50;

/**
 * What a screen shows of a mound: the given session, or with null the one that has the mound, or the last that had it.
 * Every number is rounded to its quantum. A session unknown to the ledger gives a view without a session.
 */
export function moundView(ledger: Ledger, session: string | null): MoundView {
  const entry = ledger.sessions[session ?? ledger.active ?? lastClosed(ledger) ?? ''];
  const shown = entry === undefined ? null : sessionView(ledger, entry);
  const unclaimed = throwsOf(ledger, null);
  const before = Math.max(0, unclaimed.length - UNCLAIMED_LISTED);
  const newest = shown?.throws.at(-1)?.place ?? 0;
  return rounded<MoundView>({
    mound: ledger.mound,
    place: ledger.place,
    atMs: ledger.atMs,
    generation: ledger.generation,
    scienceVersion: SCIENCE_VERSION,
    session: shown?.session ?? null,
    openSessions: openSessions(ledger),
    source: ledger.source,
    air: ledger.air,
    unclaimedCount: unclaimed.length,
    unclaimedSince: unclaimed.filter(({ place }) => place > newest).length,
    throws: shown?.throws ?? [],
    unclaimed: unclaimed.slice(before).map((thrown, index) => unclaimedView(thrown, before + index + 1)),
  });
}

/** Nobody has the mound once the session that had it is closed. Another that is open waits to be passed to: it must not look as if it were thrown in. */
function lastClosed({ order, sessions }: Ledger): string | undefined {
  return order.reduce<string | undefined>((last, id) => (closedAt(sessions[id]) >= closedAt(sessions[last ?? '']) ? id : last), undefined);
}

function closedAt(session: SessionEntry | undefined): number {
  return session?.closedAtMs ?? -Infinity;
}

function sessionView(ledger: Ledger, entry: SessionEntry): { session: SessionView; throws: ThrowView[] } {
  const entries = throwsOf(ledger, entry.id);
  const baselines = stageBaselines(entry, entries);
  const throws = entries.map((thrown, index) => throwView(thrown, index + 1, entry, baselines));
  const trials = entry.trials.map((trial): TrialView => ({
    ...trial,
    count: throws.filter(({ trial: letter }) => letter === trial.letter).length,
    seamEffect: seamEffectView(entries, entry, trial.letter),
  }));
  const { id, athlete, timeZone, openedAtMs, closedAtMs, stage, distanceM, effort, intent, decision, notes } = entry;
  const [zone, speedBand] = [zoneIn(entry, stage), speedBandIn(entry, stage)];
  const current = throws.filter((thrown) => thrown.stage === stage);
  const worked = currentTrial(current, entry);
  const care = armCareView(entry, entries);
  return {
    throws,
    session: {
      id, athlete, timeZone, openedAtMs, closedAtMs, stage, distanceM, effort, intent, zone, speedBand, decision, notes, trials,
      active: ledger.active === id,
      trial: trials.find(({ letter }) => letter === entry.trial) ?? null,
      baseline: baselineState(baselines(stage), entries, entry),
      counts: { all: throws.length, stage: current.length, trial: worked.length },
      windows: windowsOver(worked.flatMap(({ separation, miss, excluded }) => (separation === null || excluded !== null ? [] : [{ separation, miss }])), zone !== null),
      feedback: feedbackView(entry.told, throws),
      armCare: care,
      armTalk: armTalkView(entry.told, entries),
      comfort: comfortView(entry),
      progress: progressView(entry, throws, care),
      honestArm: honestArmView(worked, current, ledger.throws),
      fatigue: fatigueView(current),
      baselineDrift: driftView(baselines(stage), entries, entry),
      nextDaySet: nextDayView(entry, throws, care),
      plannedThrows: throwsPlanned(entry.planned, care.day),
      triedBefore: triedOverDays(entry.planned.tried.flatMap((one) => (one.stage === stage ? [[one.tried]] : []))),
      observations: entry.planned.observations,
    },
  };
}

/** The throws of the trial that is being worked on; before any trial, those of the intent that was said. */
function currentTrial(thrown: readonly ThrowView[], { trial, intent }: SessionEntry): ThrowView[] {
  return thrown.filter((one) => !one.fastball && (trial === null ? one.trial === null && one.intent !== null && one.intent === intent : one.trial === trial));
}

function baselineState(own: readonly FastballBaseline[], entries: readonly ThrowEntry[], session: SessionEntry): BaselineState {
  const newest = own.at(-1);
  if (newest !== undefined) return baselineView(newest, 'this-session');
  const earlier = session.earlier[session.stage];
  if (earlier !== undefined) return baselineView(earlier, 'earlier');
  return { kind: 'forming', have: fastballsOf(entries, session, session.stage).length, need: FASTBALLS_NEEDED };
}

/** Of the newest baseline of this session; an earlier one is left as soon as this session has its own. */
function driftView(own: readonly FastballBaseline[], entries: readonly ThrowEntry[], session: SessionEntry): BaselineDrift | null {
  const newest = own.at(-1);
  return newest === undefined ? null : baselineDrift(newest, fastballsOf(entries, session, session.stage));
}

function baselineView(baseline: FastballBaseline, origin: 'this-session' | 'earlier'): BaselineState {
  const { sincePlace: _, ...shown } = baseline;
  return { kind: 'baseline', origin, ...shown };
}
