import type { ComparisonEntry, ObservationView } from '../facts/advice-view.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { CoachSays } from '../facts/coach.ts';
import type { Fact } from '../facts/fact.ts';
import type { AthleteBrought, StageTried } from './brought.ts';
import { foundBetter, type FoundBetter } from './found-better.ts';
import { gathered, type Gathered } from './gathered.ts';
import { comparisonsTogether, NOTHING_KNOWN, plansTogether, type PassedWork, type PlansKnown } from './plans-known.ts';
import type { TrialEntry } from './trial-entry.ts';
import { workOf } from './work.ts';

/** What an athlete brings along of plans and comparisons from this mound, and how earlier trials did. */
export interface PlansBrought extends PlansKnown {
  /** What closed sessions have shown of the families, oldest first, as they stood when they closed. */
  readonly tried: Gathered<StageTried>;
}
export const NO_PLANS: PlansBrought = { ...NOTHING_KNOWN, tried: [] };

/** What the coach has said of plans and comparisons in one session, and what was known when it opened. */
export interface Planned extends Omit<PlansBrought, 'decision' | 'compared'> {
  /** What comparisons had found better when it opened, over all of their days. */
  readonly better: readonly FoundBetter[];
  readonly passedBefore: readonly PassedWork[];
  readonly observations: readonly ObservationView[];
  /** Opened or continued here. */
  readonly comparisons: readonly ComparisonEntry[];
  readonly comparisonsBefore: readonly ComparisonEntry[];
  /** The highest number of a comparison on another mound, as far as this session was told; 0 without one. */
  readonly comparisonsElsewhere: number;
}

export type PlanSays = Extract<CoachSays, { kind: 'gate-set' | 'gate-passed' | 'count-planned' | 'observation-ticked' | 'comparison-opened' | 'comparison-continued' }>;

export function plannedAtOpening({ tried, ...own }: PlansBrought, elsewhere: Pick<AthleteBrought, 'tried' | 'comparisons' | 'plans'>): Planned {
  const { comparisons, passed, compared, decision: _, ...known } = plansTogether(own, elsewhere.plans);
  return {
    ...known,
    better: foundBetter(comparisons, compared),
    passed: [], passedBefore: passed, observations: [], comparisons: [], comparisonsBefore: comparisons,
    tried: elsewhere.tried.length === 0 ? tried : gathered([...elsewhere.tried, ...tried.flat()]),
    comparisonsElsewhere: elsewhere.comparisons,
  };
}

/** What a session knows once it has heard more of other mounds. How earlier trials did stays as it was known at its opening. */
export function plannedHearing(planned: Planned, { plans, comparisons: highest }: Pick<AthleteBrought, 'comparisons' | 'plans'>): Planned {
  const { gates, count, comfort, comparisonsBefore, passedBefore } = planned;
  const known = plansTogether({ ...NOTHING_KNOWN, gates, count, comfort, comparisons: comparisonsBefore, passed: passedBefore }, plans);
  return {
    ...planned,
    gates: known.gates, count: known.count, comfort: known.comfort,
    comparisonsBefore: known.comparisons, passedBefore: known.passed,
    comparisonsElsewhere: Math.max(planned.comparisonsElsewhere, highest),
  };
}

/** What of a session its plans refer to. */
interface Present {
  readonly trial: string | null;
  readonly trials: readonly TrialEntry[];
  readonly openedDay: IsoDay;
}

export function plannedAfter(planned: Planned, { trial, trials, openedDay }: Present, { atMs }: Fact, said: PlanSays): Planned {
  switch (said.kind) {
    case 'gate-set': return { ...planned, gates: { ...planned.gates, [said.stage]: { gate: said.gate, saidAtMs: atMs } } };
    case 'gate-passed': {
      const passing = trials.find(({ letter }) => letter === said.trial);
      if (passing === undefined) return planned;
      return { ...planned, passed: [...planned.passed, { stage: said.stage, trial: said.trial, work: workOf(passing), atMs, reason: said.reason }] };
    }
    case 'count-planned': return { ...planned, count: { throws: said.throws, dayMost: said.dayMost, day: openedDay, saidAtMs: atMs } };
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

/** Throws from a mound that are planned for a day; null where nobody planned. */
export function throwsPlanned({ count }: Pick<PlansKnown, 'count'>, day: IsoDay): number | null {
  return count !== null && count.day === day ? count.throws : null;
}

/** A comparison of the athlete by its number, with all days that this session knows, wherever it went on. */
export function comparisonOf({ comparisons, comparisonsBefore }: Planned, k: number): ComparisonEntry | undefined {
  return comparisonsTogether([...comparisons, ...comparisonsBefore].filter((one) => one.k === k))[0];
}

/** The number of the athlete's next comparison, counted over all mounds. */
export function nextComparison({ comparisons, comparisonsBefore, comparisonsElsewhere }: Planned): number {
  return Math.max(comparisonsElsewhere, ...[...comparisons, ...comparisonsBefore].map(({ k }) => k)) + 1;
}

/** What the athlete brings to the next session after this statement. */
export function plansAfter(plans: PlansBrought, planned: Planned): PlansBrought {
  const own = new Set(planned.comparisons.map(({ k }) => k));
  const passed = [...plans.passed.filter((one) => !planned.passed.includes(one)), ...planned.passed];
  return { ...plans, passed, gates: planned.gates, count: planned.count, comparisons: [...plans.comparisons.filter(({ k }) => !own.has(k)), ...planned.comparisons] };
}
