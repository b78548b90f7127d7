import type { ComparedThrow } from '../coaching/compared-throw.ts';
import { separationFrom } from '../coaching/separation.ts';
import type { ComparisonEntry } from '../facts/advice-view.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { baselineNumbered, isFastball, sessionBaselines } from './fastballs.ts';
import { sessionIn, thrownBy, type Ledger, type SessionEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';

/** One throw that a comparison takes, and what it was in its session. */
export interface TakenThrow extends ComparedThrow {
  readonly session: string;
  /** Position in its session, from 1. */
  readonly number: number;
  readonly atMs: number;
  /** Why it was excluded; null for one that was not. */
  readonly because: string | null;
  readonly inferred: boolean;
}

/** The number of the newest fastball baseline of a session in a stage: its own, or the one that it brought; null without one. */
export function newestBaseline(ledger: Ledger, session: SessionEntry, stage: Stage): number | null {
  return sessionBaselines(thrownBy(ledger, session.id), session, stage).at(-1)?.number ?? session.earlier[stage]?.number ?? null;
}

/**
 * The throws of one day of a comparison in the order thrown, held against the baseline that it fixed; excluded ones are
 * marked. Without movement, or with a measurement that contradicts itself, a throw cannot be compared and is left out.
 * Empty where the ledger knows neither session nor baseline.
 */
function takenThrows(ledger: Ledger, day: ComparisonEntry['days'][number], stage: Stage): readonly TakenThrow[] {
  const session = sessionIn(ledger, day.session);
  if (session === undefined) return [];
  const thrown = thrownBy(ledger, session.id);
  const baseline = baselineNumbered(thrown, session, stage, day.baseline);
  if (baseline === undefined) return [];
  return thrown.flat().flatMap((entry, index): TakenThrow[] => {
    const tags = entry.tags[session.id]!;
    const trial = tags.trial === day.a ? 'a' : tags.trial === day.b ? 'b' : null;
    if (trial === null || tags.stage !== stage || isFastball(entry, session)) return [];
    const analysed = analysisOf(entry, session);
    const { verticalM, armSideM, speedMps } = separationFrom(analysed, baseline);
    if (analysed.problem !== null || typeof verticalM !== 'number' || typeof armSideM !== 'number') return [];
    const { place, atMs } = entry;
    const { tiltRad, inferred } = analysed;
    return [{ session: session.id, number: index + 1, place, atMs, day: tags.day, trial, excluded: tags.excluded !== null, because: tags.excluded, verticalM, armSideM, speedMps, tiltRad, inferred }];
  });
}

/**
 * All throws of a comparison, over its days and mounds, in the order thrown. Their places are given anew, from 1, because
 * two mounds count theirs apart.
 * @param ledgerOf the ledger that holds a session; null for one that is not at hand, whose day is then left out
 */
export function allTaken({ days, stage }: Pick<ComparisonEntry, 'days' | 'stage'>, ledgerOf: (session: string) => Ledger | null): readonly TakenThrow[] {
  const taken = days.flatMap((day) => {
    const ledger = ledgerOf(day.session);
    return ledger === null ? [] : takenThrows(ledger, day, stage);
  });
  return taken.toSorted((a, b) => a.atMs - b.atMs).map((thrown, index) => ({ ...thrown, place: index + 1 }));
}
