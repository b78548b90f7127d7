import type { ComparisonEntry } from '../../core/facts/advice-view.ts';
import { compareTrials, type Comparison } from '../../core/coaching/comparison.ts';
import type { IsoDay, MayThrow } from '../../core/facts/care-view.ts';
import { allTaken, type TakenThrow } from '../../core/session/compared.ts';
import { comparisonsTogether } from '../../core/session/plans-known.ts';
import { zoneIn } from '../../core/session/targets.ts';
import { workOf } from '../../core/session/work.ts';
import { ledgerOf, type AthleteRecord, type FoldedSession } from './record.ts';
import type { TrialRow } from './rows.ts';

/** A comparison that was opened, and what it says today. */
export interface OpenedComparison {
  readonly entry: ComparisonEntry;
  /** Where it was opened: what is said of it is said there. */
  readonly mound: string;
  readonly openedIn: string;
  readonly taken: readonly TakenThrow[];
  readonly compared: Comparison;
}

/** Every comparison of the athlete with all of its days, newest number first. */
export function comparisonsOf(record: AthleteRecord, today: IsoDay, mayThrow: MayThrow | null): readonly OpenedComparison[] {
  const opened = record.sessions.flatMap(({ entry, recorded }) => entry.planned.comparisons
    .filter(({ days }) => days[0]?.session === entry.id)
    .map((one) => ({ entry: one, mound: recorded.mound, openedIn: entry.id })));
  const everywhere = record.sessions.flatMap(({ entry }) => entry.planned.comparisons);
  return opened.map((here): OpenedComparison => {
    // It may have gone on in another session, on another mound.
    const one = { ...here, entry: comparisonsTogether([here.entry, ...everywhere.filter(({ k }) => k === here.entry.k)])[0]! };
    const { k, zone } = one.entry;
    const taken = allTaken(one.entry, (session) => ledgerOf(record, session));
    return { ...one, taken, compared: compareTrials(taken, { number: k, zone, today, mayThrow }) };
  }).toSorted((a, b) => b.entry.k - a.entry.k);
}

/** The letters under which two trials were thrown in one session. */
export interface SharedDay {
  readonly session: FoldedSession;
  readonly a: string;
  readonly b: string;
}

/** The sessions in which both trials were thrown in that stage, newest first. The rows' own letters come before others of the same work. */
export function sharedDays({ sessions }: AthleteRecord, a: TrialRow, b: TrialRow): readonly SharedDay[] {
  if (a.stage !== b.stage || (a.work === b.work && a.session !== b.session)) return [];
  return sessions.flatMap((session): SharedDay[] => {
    const [first, second] = [letterIn(session, a), letterIn(session, b)];
    return first === null || second === null || first === second ? [] : [{ session, a: first, b: second }];
  });
}

function letterIn({ entry, view }: FoldedSession, row: TrialRow): string | null {
  if (row.session === entry.id) return row.letter;
  const thrown = (letter: string): boolean => view.throws.some((one) => one.trial === letter && one.stage === row.stage && !one.fastball);
  return entry.trials.findLast((trial) => workOf(trial) === row.work && thrown(trial.letter))?.letter ?? null;
}

/** The newest comparison of two trials; null where none was opened. */
export function comparisonOfPair(opened: readonly OpenedComparison[], shared: readonly SharedDay[], stage: TrialRow['stage']): OpenedComparison | null {
  return opened.find(({ entry }) => entry.stage === stage && entry.days.some((day) => shared.some(({ session, a, b }) =>
    session.entry.id === day.session && ((day.a === a && day.b === b) || (day.a === b && day.b === a))))) ?? null;
}

/** What has changed since a comparison was opened; it keeps what it fixed, and a new one gets the next number. */
export function movedSince({ entry }: OpenedComparison, record: AthleteRecord): 'zone' | 'baseline' | null {
  const held = entry.days.flatMap((day) => record.sessions.filter(({ entry: session }) => session.id === day.session).map((session) => ({ day, session })));
  const newest = held.toSorted((a, b) => b.session.entry.openedAtMs - a.session.entry.openedAtMs)[0];
  if (newest === undefined) return null;
  const zone = zoneIn(newest.session.entry, entry.stage);
  if (zone !== null && !sameZone(zone, entry.zone)) return 'zone';
  const moved = held.some(({ day, session }) => session.recorded.baselines[entry.stage] !== day.baseline);
  return moved ? 'baseline' : null;
}

function sameZone(one: ComparisonEntry['zone'], other: ComparisonEntry['zone']): boolean {
  return one.verticalM === other.verticalM && one.armSideM === other.armSideM && one.verticalRadiusM === other.verticalRadiusM && one.armSideRadiusM === other.armSideRadiusM;
}
