import type { WorkedDay } from '../coaching/next-day-set.ts';
import type { ComparisonEntry, PassedGate } from '../facts/advice-view.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { Decision } from '../facts/decision-says.ts';
import type { Gate } from '../facts/plan-says.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { ComparedDay } from './found-better.ts';
import { gathered, type Gathered } from './gathered.ts';
import type { TrialEntry } from './trial-entry.ts';

/** How one trial did in one stage of one session; the same intent, grip and cue on another day are the same work. */
export interface WorkedStage extends Omit<WorkedDay, 'better'> {
  readonly stage: Stage;
  /** Names the trial over sessions, where its letter changes. */
  readonly work: string;
  /** The newest of the session's trials that are this work. */
  readonly trial: TrialEntry;
  readonly day: IsoDay;
  readonly throws: number;
}

/** What the athlete last said of a trial in a stage. */
export interface StageComfort {
  readonly stage: Stage;
  readonly work: string;
  readonly comfortable: boolean;
  readonly atMs: number;
}

export interface PassedWork extends PassedGate {
  readonly work: string;
}

/** Of two mounds what was said later holds. */
interface Said {
  readonly saidAtMs: number;
}
interface SaidGate extends Said {
  readonly gate: Gate;
}
interface SaidCount extends Said {
  /** Planned from a mound for `day` alone; null: nothing planned. */
  readonly throws: number | null;
  readonly day: IsoDay;
  /** A rule of league or club, until another is said. */
  readonly dayMost: number | null;
}
type SaidDecision = Said & Decision;

/** What is known of an athlete's plans, comparisons and earlier trials, on one mound or on several. */
export interface PlansKnown {
  readonly gates: Readonly<Partial<Record<Stage, SaidGate>>>;
  readonly count: SaidCount | null;
  readonly decision: SaidDecision | null;
  readonly comparisons: readonly ComparisonEntry[];
  /** What closed sessions have to say to those comparisons. */
  readonly compared: readonly ComparedDay[];
  /** Of closed sessions, as they stood when they closed. */
  readonly worked: Gathered<WorkedStage>;
  readonly comfort: readonly StageComfort[];
  readonly passed: readonly PassedWork[];
}
export const NOTHING_KNOWN: PlansKnown = { gates: {}, count: null, decision: null, comparisons: [], compared: [], worked: [], comfort: [], passed: [] };

/** What two mounds know together: of what can be said once the later word, of what gathers everything, in order of time. */
export function plansTogether(one: PlansKnown, other: PlansKnown): PlansKnown {
  // Most athletes throw from one mound only, and what they have done is long.
  if (other === NOTHING_KNOWN) return one;
  return {
    gates: Object.fromEntries(STAGES.flatMap((stage) => {
      const gate = later(one.gates[stage] ?? null, other.gates[stage] ?? null);
      return gate === null ? [] : [[stage, gate]];
    })),
    count: later(one.count, other.count),
    decision: later(one.decision, other.decision),
    comparisons: comparisonsTogether([...one.comparisons, ...other.comparisons]),
    compared: eachOnce([...one.compared, ...other.compared], ({ k, session, day }) => `${k}/${session}/${day}`),
    worked: gathered(eachOnce([...one.worked, ...other.worked].flat(), ({ stage, work, firstAtMs }) => `${stage}/${firstAtMs}/${work}`).sort((a, b) => a.firstAtMs - b.firstAtMs)),
    comfort: eachOnce([...one.comfort, ...other.comfort].sort((a, b) => a.atMs - b.atMs), ({ stage, work }) => `${stage}/${work}`),
    passed: eachOnce([...one.passed, ...other.passed], ({ stage, work, atMs }) => `${stage}/${atMs}/${work}`).sort((a, b) => a.atMs - b.atMs),
  };
}

function later<One extends Said>(one: One | null, other: One | null): One | null {
  return one === null || other === null ? (one ?? other) : other.saidAtMs > one.saidAtMs ? other : one;
}

/** Of those with one key the last. */
function eachOnce<One>(all: readonly One[], key: (one: One) => string): One[] {
  return [...new Map(all.map((one) => [key(one), one])).values()];
}

/** Each comparison once: one that was continued in two places holds the days of both. */
export function comparisonsTogether(all: readonly ComparisonEntry[]): ComparisonEntry[] {
  const known = new Map<number, ComparisonEntry>();
  for (const one of all) {
    const before = known.get(one.k);
    const more = one.days.filter(({ session }) => !before?.days.some((day) => day.session === session));
    known.set(one.k, before === undefined ? one : { ...before, days: [...before.days, ...more] });
  }
  return [...known.values()];
}
