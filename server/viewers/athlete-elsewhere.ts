import type { AthleteElsewhere } from '../../core/facts/elsewhere-says.ts';
import { STAGES } from '../../core/facts/vocabulary.ts';
import { triedOverDays } from '../../core/coaching/tried-over-days.ts';
import { SCIENCE_VERSION } from '../../core/session/analyse.ts';
import type { NumbersByStage } from '../../core/session/brought.ts';
import { earlierBaselines } from '../../core/session/fastballs.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import { newestBaselines, newestTargets, numbersGiven } from '../../core/session/other-mounds.ts';
import { plansElsewhere } from './plans-elsewhere.ts';

/** What a mound is to be told of an athlete besides the arm; null where no other mound knows anything. */
export function athleteElsewhere(ledgers: readonly Ledger[], mound: string, session: string | null, athlete: string): AthleteElsewhere | null {
  const others = ledgers.filter((ledger) => ledger.mound !== mound && ledger.athletes[athlete] !== undefined);
  const [targets, baselines, tried] = [targetsOf(others, athlete), baselinesOf(others, athlete), triedOn(others, athlete)];
  const comparisons = highestNumber(others, athlete);
  const plans = plansElsewhere(ledgers, mound, athlete);
  if (targets.length === 0 && baselines.length === 0 && tried.length === 0 && comparisons === 0 && plans === null) return null;
  return { kind: 'athlete-elsewhere', athlete, session, scienceVersion: SCIENCE_VERSION, targets, baselines, tried, comparisons, ...(plans === null ? {} : { plans }) };
}

/** The highest number of a comparison of an athlete on these mounds; 0 without one. */
export function highestNumber(ledgers: readonly Ledger[], athlete: string): number {
  return Math.max(0, ...ledgers.flatMap(({ athletes }) => athletes[athlete]?.plans.comparisons.map(({ k }) => k) ?? []));
}

function targetsOf(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['targets'] {
  const newest = ledgers.map(({ athletes }) => athletes[athlete]?.targets ?? {}).reduce(newestTargets, {});
  return STAGES.flatMap((stage) => (newest[stage] === undefined ? [] : [{ stage, ...newest[stage] }]));
}

function baselinesOf(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['baselines'] {
  const known = ledgers.map((ledger) => earlierBaselines(ledger, athlete));
  const newest = known.reduce(newestBaselines, {});
  const given = known.reduce<NumbersByStage>((numbers, baselines) => numbersGiven(baselines, numbers), {});
  return STAGES.flatMap((stage) => {
    if (newest[stage] === undefined) return [];
    const { sincePlace: _, ...told } = newest[stage];
    return [{ newest: structuredClone(told), highestNumber: given[stage]! }] as AthleteElsewhere['baselines'];
  });
}

function triedOn(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['tried'] {
  const days = ledgers.flatMap(({ athletes }) => athletes[athlete]?.plans.tried.flat() ?? []);
  return STAGES.flatMap((stage) => triedOverDays(days.flatMap((one) => (one.stage === stage ? [[one.tried]] : []))).map((tried) => ({ stage, tried })));
}
