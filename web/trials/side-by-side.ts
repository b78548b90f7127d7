import { zoneIn } from '../../core/session/targets.ts';
import type { LetteredPlaneData } from '../charts/lettered-plane.ts';
import type { Speech } from '../words/speech.ts';
import { cloudOfRows, cloudOfTaken, cloudsData } from './clouds.ts';
import { comparisonOfPair, movedSince, sharedDays, type OpenedComparison, type SharedDay } from './comparison-of.ts';
import { entryNames, rowNames, type Names } from './names.ts';
import { daysToAdd, nextNumber, statementsToOpen, type Obstacle, type Statement } from './opening.ts';
import type { AthleteRecord } from './record.ts';
import type { TrialRow } from './rows.ts';

/** Two trials as they stand beside each other: what was opened, what could be, and how they are called. */
export interface SideBySide {
  /** Null where none was opened. */
  readonly comparison: OpenedComparison | null;
  readonly names: Names;
  /** The trial that is compared with, and the one that is compared. */
  readonly first: TrialRow;
  readonly second: TrialRow;
  readonly moved: 'zone' | 'baseline' | null;
  readonly daysToAdd: readonly SharedDay[];
  /** Of the next comparison of these two, and what opens it or why it cannot be opened. */
  readonly nextK: number;
  readonly toOpen: readonly Statement[] | Obstacle;
  readonly timeZone: string;
  readonly clouds: LetteredPlaneData;
}

/** Two rows of one stage, the older first; an opened comparison keeps the way round in which it was opened. */
export function sideBySide(record: AthleteRecord, a: TrialRow, b: TrialRow, opened: readonly OpenedComparison[], speech: Speech): SideBySide {
  const shared = sharedDays(record, a, b);
  const comparison = comparisonOfPair(opened, shared, a.stage);
  const [first, second] = comparison !== null && isTurned(comparison, shared) ? [b, a] : [a, b];
  const names = comparison === null ? rowNames(a, b, speech) : entryNames(comparison.entry);
  const newer = record.sessions.find(({ entry }) => entry.id === b.session)!;
  const nextK = nextNumber(opened);
  const thrown = comparison === null ? cloudOfRows(a, b) : cloudOfTaken(comparison.taken);
  const letters = comparison === null ? { a: a.letter, b: b.letter } : names;
  return {
    comparison, names, first, second, nextK,
    moved: comparison === null ? null : movedSince(comparison, record),
    daysToAdd: comparison === null ? [] : daysToAdd(comparison, shared),
    toOpen: statementsToOpen(shared, a.stage, nextK, a.work === b.work),
    timeZone: newer.entry.timeZone,
    clouds: cloudsData(thrown, comparison?.entry.zone ?? zoneIn(newer.entry, a.stage), newer, names, letters, speech),
  };
}

function isTurned({ entry }: OpenedComparison, shared: readonly SharedDay[]): boolean {
  return shared.some(({ session, a }) => entry.days.some((day) => day.session === session.entry.id && day.b === a));
}
