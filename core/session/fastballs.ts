import { baselinesOf, type FastballBaseline, type FastballReading } from '../coaching/baseline.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { BaselinesByStage } from './brought.ts';
import { throwsOf, type Ledger, type SessionEntry, type ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';

/** Whether a throw of this session counts as the athlete's fastball. */
export function isFastball(entry: ThrowEntry, session: SessionEntry): boolean {
  return entry.tags[session.id]?.intent === session.athlete.mainFastball;
}

/** The fastballs of a stage that a baseline may rest on, in the order of the log. */
export function fastballsOf(entries: readonly ThrowEntry[], session: SessionEntry, stage: Stage): FastballReading[] {
  return entries.flatMap((entry) => {
    const tags = entry.tags[session.id];
    if (tags === undefined || tags.stage !== stage || tags.excluded !== null || !isFastball(entry, session)) return [];
    const { speedMps, verticalM, armSideM, flightTimeS, releaseHeightM, releaseArmSideM, path } = analysisOf(entry, session);
    if (typeof speedMps !== 'number' || typeof verticalM !== 'number' || typeof armSideM !== 'number') return [];
    return [{ place: entry.place, atMs: entry.atMs, speedMps, verticalM, armSideM, flightTimeS, releaseHeightM, releaseArmSideM, path }];
  });
}

/** The baselines of this session in one stage, oldest first. */
export function sessionBaselines(entries: readonly ThrowEntry[], session: SessionEntry, stage: Stage): FastballBaseline[] {
  const renewals = session.renewals.filter((renewal) => renewal.stage === stage).map(({ place }) => place);
  return baselinesOf(stage, fastballsOf(entries, session, stage), renewals, session.baselinesGiven[stage] ?? 0);
}

/** A baseline of this session by its number, of its own or the one that it brought; undefined without it. */
export function baselineNumbered(entries: readonly ThrowEntry[], session: SessionEntry, stage: Stage, number: number): FastballBaseline | undefined {
  return [session.earlier[stage], ...sessionBaselines(entries, session, stage)].find((one) => one?.number === number);
}

/** Newest baseline of every stage that an athlete brings along from this mound. */
export function earlierBaselines(ledger: Ledger, athlete: string): BaselinesByStage {
  const newest: Partial<Record<Stage, FastballBaseline>> = { ...ledger.athletes[athlete]?.baselines };
  for (const id of ledger.order) {
    const session = ledger.sessions[id];
    if (session === undefined || session.athlete.id !== athlete) continue;
    const entries = throwsOf(ledger, id);
    for (const stage of STAGES) {
      const last = sessionBaselines(entries, session, stage).at(-1);
      if (last !== undefined && last.number > (newest[stage]?.number ?? 0)) newest[stage] = last;
    }
  }
  return newest;
}
