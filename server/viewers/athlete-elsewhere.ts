import type { AthleteElsewhere } from '../../core/facts/elsewhere-says.ts';
import { STAGES } from '../../core/facts/vocabulary.ts';
import { triedOverDays } from '../../core/coaching/tried-over-days.ts';
import { SCIENCE_VERSION } from '../../core/session/analyse.ts';
import { earlierBaselines } from '../../core/session/fastballs.ts';
import type { Ledger } from '../../core/session/ledger.ts';

/** What a mound is to be told of an athlete besides the arm; null where no other mound knows anything. */
export function athleteElsewhere(ledgers: readonly Ledger[], mound: string, session: string | null, athlete: string): AthleteElsewhere | null {
  const others = ledgers.filter((ledger) => ledger.mound !== mound && ledger.athletes[athlete] !== undefined);
  const [targets, baselines, tried] = [targetsOf(others, athlete), baselinesOf(others, athlete), triedOn(others, athlete)];
  const comparisons = highestNumber(others, athlete);
  if (targets.length === 0 && baselines.length === 0 && tried.length === 0 && comparisons === 0) return null;
  return { kind: 'athlete-elsewhere', athlete, session, scienceVersion: SCIENCE_VERSION, targets, baselines, tried, comparisons };
}

/** The highest number of a comparison of an athlete on these mounds; 0 without one. */
export function highestNumber(ledgers: readonly Ledger[], athlete: string): number {
  return Math.max(0, ...ledgers.flatMap(({ athletes }) => athletes[athlete]?.plans.comparisons.map(({ k }) => k) ?? []));
}

function targetsOf(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['targets'] {
  return STAGES.flatMap((stage) => {
    const said = ledgers.flatMap(({ athletes }) => athletes[athlete]?.targets[stage] ?? []);
    const newest = latest(said, ({ saidAtMs }) => saidAtMs);
    return newest === undefined ? [] : [{ stage, ...newest }];
  });
}

function baselinesOf(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['baselines'] {
  const known = ledgers.map((ledger) => earlierBaselines(ledger, athlete));
  return STAGES.flatMap((stage) => {
    const formed = known.flatMap((baselines) => baselines[stage] ?? []);
    const newest = latest(formed, ({ atMs }) => atMs);
    if (newest === undefined) return [];
    const { sincePlace: _, path, cloud, ...rest } = newest;
    const copied = typeof path === 'string' ? path : { positionM: [...path.positionM], velocityMps: [...path.velocityMps], accelerationMps2: [...path.accelerationMps2] };
    return [{ newest: { ...rest, path: copied, cloud: cloud.map(([vertical, arm]) => [vertical, arm]) }, highestNumber: Math.max(...formed.map(({ number }) => number)) }] as AthleteElsewhere['baselines'];
  });
}

function triedOn(ledgers: readonly Ledger[], athlete: string): AthleteElsewhere['tried'] {
  const days = ledgers.flatMap(({ athletes }) => athletes[athlete]?.plans.tried ?? []);
  return STAGES.flatMap((stage) => triedOverDays(days.flatMap((one) => (one.stage === stage ? [[one.tried]] : []))).map((tried) => ({ stage, tried })));
}

function latest<T>(things: readonly T[], atMs: (thing: T) => number): T | undefined {
  return [...things].sort((a, b) => atMs(a) - atMs(b)).at(-1);
}
