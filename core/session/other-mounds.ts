import type { AthleteElsewhere } from '../facts/elsewhere-says.ts';
import type { PlansElsewhere } from '../facts/plans-elsewhere.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { NOTHING_ELSEWHERE, type AthleteBrought, type BaselinesByStage, type NumbersByStage } from './brought.ts';
import { gathered } from './gathered.ts';
import { sessionIn, withSession, type Ledger } from './ledger.ts';
import { plannedHearing } from './planned.ts';
import { plansTogether, type PlansKnown } from './plans-known.ts';
import type { TargetsByStage } from './targets.ts';

/** Told by the server: it holds for the athlete's next session here; a session that is named hears of plans and comparisons at once. */
export function heardElsewhere(ledger: Ledger, said: AthleteElsewhere): Ledger {
  const otherMounds = { ...ledger.otherMounds, [said.athlete]: broughtBy(said, ledger.otherMounds[said.athlete] ?? NOTHING_ELSEWHERE) };
  const session = said.session === null ? undefined : sessionIn(ledger, said.session);
  if (session === undefined) return { ...ledger, otherMounds };
  const planned = plannedHearing(session.planned, otherMounds[said.athlete]!);
  return { ...ledger, otherMounds, ...withSession(ledger, { ...session, planned }) };
}

/** A number that was given stays given. */
function broughtBy({ targets, baselines, tried, comparisons, plans }: AthleteElsewhere, before: AthleteBrought): AthleteBrought {
  return {
    targets: Object.fromEntries(targets.map(({ stage, ...target }) => [stage, target])),
    // Its place is one of another log: here it stood before everything.
    baselines: Object.fromEntries(baselines.map(({ newest }) => [newest.stage, { ...newest, sincePlace: 0 }])),
    baselinesGiven: byStage(before.baselinesGiven, Object.fromEntries(baselines.map(({ newest, highestNumber }) => [newest.stage, highestNumber])), Math.max),
    tried,
    comparisons: Math.max(before.comparisons, comparisons),
    plans: plans === undefined ? before.plans : plansTogether(before.plans, plansSaid(plans)),
  };
}

function plansSaid({ gates, worked, ...plans }: PlansElsewhere): PlansKnown {
  return { ...plans, worked: gathered(worked), gates: Object.fromEntries(gates.map(({ stage, ...gate }) => [stage, gate])) };
}

/** Of two mounds the target that was said later holds, stage by stage. */
export function newestTargets(here: TargetsByStage, elsewhere: TargetsByStage): TargetsByStage {
  return byStage(here, elsewhere, (one, other) => (other.saidAtMs > one.saidAtMs ? other : one));
}

/** Of two mounds the baseline whose last fastball was thrown later, stage by stage. */
export function newestBaselines(here: BaselinesByStage, elsewhere: BaselinesByStage): BaselinesByStage {
  return byStage(here, elsewhere, (one, other) => (other.atMs > one.atMs ? other : one));
}

/** The highest number of a baseline of each stage, so that the next one is nobody else's. */
export function numbersGiven(here: BaselinesByStage, elsewhere: NumbersByStage): NumbersByStage {
  const own = Object.fromEntries(Object.entries(here).map(([stage, { number }]) => [stage, number]));
  return byStage<number>(own, elsewhere, Math.max);
}

function byStage<T>(here: Readonly<Partial<Record<Stage, T>>>, elsewhere: Readonly<Partial<Record<Stage, T>>>, choose: (one: T, other: T) => T): Partial<Record<Stage, T>> {
  return Object.fromEntries(STAGES.flatMap((stage) => {
    const [one, other] = [here[stage], elsewhere[stage]];
    const chosen = one === undefined || other === undefined ? (one ?? other) : choose(one, other);
    return chosen === undefined ? [] : [[stage, chosen]];
  }));
}
