import { STAGES } from '../../core/facts/vocabulary.ts';
import type { PlansElsewhere } from '../../core/facts/plans-elsewhere.ts';
import { NOTHING_ELSEWHERE } from '../../core/session/brought.ts';
import { comparedDays } from '../../core/session/compared-days.ts';
import type { ComparedDay } from '../../core/session/found-better.ts';
import { sessionIn, type Ledger } from '../../core/session/ledger.ts';
import { NOTHING_KNOWN, plansTogether, type PlansKnown } from '../../core/session/plans-known.ts';

/**
 * What a mound is to be told of an athlete's plans on others: of what can be said again the newest, of what gathers only what it
 * was not told before; null where that is nothing.
 */
export function plansElsewhere(ledgers: readonly Ledger[], mound: string, athlete: string): PlansElsewhere | null {
  const here = ledgers.find((ledger) => ledger.mound === mound);
  const others = plansOn(ledgers.filter((ledger) => ledger !== here), athlete);
  const own = here === undefined ? NOTHING_KNOWN : plansOn([here], athlete);
  const told = (here?.otherMounds[athlete] ?? NOTHING_ELSEWHERE).plans;
  const missing = missingDays(ledgers, plansTogether(own, others));
  const { gates, count, decision, comparisons, compared, worked, comfort, passed } = { ...others, compared: [...others.compared, ...missing] };
  const news: PlansElsewhere = structuredClone({
    gates: STAGES.flatMap((stage) => (gates[stage] === undefined || same(gates[stage], told.gates[stage]) ? [] : [{ stage, ...gates[stage] }])),
    count: same(count, told.count) ? null : count,
    decision: same(decision, told.decision) ? null : decision,
    comparisons: newsIn(comparisons, told.comparisons),
    compared: newsIn(compared, told.compared),
    worked: newsIn(worked.flat(), told.worked.flat()),
    comfort: newsIn(comfort, told.comfort),
    passed: newsIn(passed, told.passed),
  }) as PlansElsewhere;
  return Object.values(news).every((part) => part === null || (Array.isArray(part) && part.length === 0)) ? null : news;
}

function plansOn(ledgers: readonly Ledger[], athlete: string): PlansKnown {
  return ledgers.map(({ athletes }) => athletes[athlete]?.plans ?? NOTHING_KNOWN).reduce(plansTogether, NOTHING_KNOWN);
}

/** Days that a comparison took in on another mound than the one where they were thrown: their own mound was never asked. */
function missingDays(ledgers: readonly Ledger[], { comparisons, compared }: PlansKnown): ComparedDay[] {
  return comparisons.flatMap((entry) => entry.days
    .filter(({ session }) => !compared.some((one) => one.k === entry.k && one.session === session))
    .flatMap((day) => ledgers.flatMap((ledger) => ((sessionIn(ledger, day.session)?.closedAtMs ?? null) === null ? [] : comparedDays(ledger, entry, day)))));
}

/** By what they say: both sides are plain data from one fold. */
function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function newsIn<One>(all: readonly One[], told: readonly One[]): readonly One[] {
  const known = new Set(told.map((one) => JSON.stringify(one)));
  return all.filter((one) => !known.has(JSON.stringify(one)));
}
