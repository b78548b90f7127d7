import type { WorkedDay } from '../coaching/next-day-set.ts';
import type { ComparisonEntry, ObservationView, PassedGate } from '../facts/advice-view.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { CoachSays } from '../facts/coach.ts';
import type { Fact } from '../facts/fact.ts';
import type { Gate } from '../facts/plan-says.ts';
import type { Stage } from '../facts/vocabulary.ts';
import type { AthleteBrought, StageTried } from './brought.ts';
import type { TrialEntry } from './trial-entry.ts';
import { workOf } from './work.ts';

/** How one trial did in one stage of one session; the same intent, grip and cue on another day are the same work. */
export interface WorkedStage extends WorkedDay {
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

/** What an athlete brings along of plans and comparisons, and how earlier trials did. */
export interface PlansBrought {
  readonly gates: Readonly<Partial<Record<Stage, Gate>>>;
  readonly dayMost: number | null;
  readonly comparisons: readonly ComparisonEntry[];
  /** Of closed sessions, as they stood when they closed. */
  readonly worked: readonly WorkedStage[];
  readonly comfort: readonly StageComfort[];
  readonly passed: readonly PassedWork[];
  /** What closed sessions have shown of the families, oldest first, as they stood when they closed. */
  readonly tried: readonly StageTried[];
}
export const NO_PLANS: PlansBrought = { gates: {}, dayMost: null, comparisons: [], worked: [], comfort: [], passed: [], tried: [] };

/** What the coach has said of plans and comparisons in one session, and what was known when it opened. */
export interface Planned extends Omit<PlansBrought, 'comparisons'> {
  readonly throws: number | null;
  readonly passedBefore: readonly PassedWork[];
  readonly observations: readonly ObservationView[];
  /** Opened or continued here. */
  readonly comparisons: readonly ComparisonEntry[];
  readonly comparisonsBefore: readonly ComparisonEntry[];
  /** The highest number of a comparison on another mound, as far as this session was told; 0 without one. */
  readonly comparisonsElsewhere: number;
}

export type PlanSays = Extract<CoachSays, { kind: 'gate-set' | 'gate-passed' | 'count-planned' | 'observation-ticked' | 'comparison-opened' | 'comparison-continued' }>;

export function plannedAtOpening({ comparisons, passed, tried, ...brought }: PlansBrought, elsewhere: Pick<AthleteBrought, 'tried' | 'comparisons'>): Planned {
  return {
    ...brought, throws: null, passed: [], passedBefore: passed, observations: [], comparisons: [], comparisonsBefore: comparisons,
    tried: [...elsewhere.tried, ...tried],
    comparisonsElsewhere: elsewhere.comparisons,
  };
}

export function plannedAfter(planned: Planned, { trial, trials }: { readonly trial: string | null; readonly trials: readonly TrialEntry[] }, { atMs }: Fact, said: PlanSays): Planned {
  switch (said.kind) {
    case 'gate-set': return { ...planned, gates: { ...planned.gates, [said.stage]: said.gate } };
    case 'gate-passed': {
      const passing = trials.find(({ letter }) => letter === said.trial);
      if (passing === undefined) return planned;
      return { ...planned, passed: [...planned.passed, { stage: said.stage, trial: said.trial, work: workOf(passing), atMs, reason: said.reason }] };
    }
    case 'count-planned': return { ...planned, throws: said.throws, dayMost: said.dayMost };
    case 'observation-ticked': return { ...planned, observations: [...planned.observations, { atMs, what: said.what, seen: said.seen, place: said.place, trial }] };
    case 'comparison-opened': {
      const { k, stage, zone, session, a, b, baseline } = said;
      return { ...planned, comparisons: [...planned.comparisons, { k, stage, zone, openedAtMs: atMs, days: [{ session, a, b, baseline }] }] };
    }
    case 'comparison-continued': {
      const known = comparisonOf(planned, said.k);
      if (known === undefined) return planned;
      const grown = { ...known, days: [...known.days, said.day] };
      return { ...planned, comparisons: [...planned.comparisons.filter(({ k }) => k !== said.k), grown] };
    }
  }
}

/** A comparison of the athlete by its number, as this session knows it. */
export function comparisonOf({ comparisons, comparisonsBefore }: Planned, k: number): ComparisonEntry | undefined {
  return [...comparisons, ...comparisonsBefore].find((one) => one.k === k);
}

/** The number of the athlete's next comparison, counted over all mounds. */
export function nextComparison({ comparisons, comparisonsBefore, comparisonsElsewhere }: Planned): number {
  return Math.max(comparisonsElsewhere, ...[...comparisons, ...comparisonsBefore].map(({ k }) => k)) + 1;
}

/** What the athlete brings to the next session after this statement. */
export function plansAfter(plans: PlansBrought, planned: Planned): PlansBrought {
  const own = new Set(planned.comparisons.map(({ k }) => k));
  const passed = [...plans.passed.filter((one) => !planned.passed.includes(one)), ...planned.passed];
  return { ...plans, passed, gates: planned.gates, dayMost: planned.dayMost, comparisons: [...plans.comparisons.filter(({ k }) => !own.has(k)), ...planned.comparisons] };
}
