import type { CoachSays } from '../../core/facts/coach.ts';
import type { Stage } from '../../core/facts/vocabulary.ts';
import { zoneIn } from '../../core/session/targets.ts';
import type { OpenedComparison, SharedDay } from './comparison-of.ts';

/** One statement, and the mound and session it is said to. */
export interface Statement {
  readonly mound: string;
  readonly session: string;
  readonly says: CoachSays;
}

/** Why two trials cannot be compared. */
export type Obstacle = 'no-day' | 'same-work' | 'no-zone' | 'no-baseline';

/** The number that the next comparison gets: counted over all mounds of the athlete. */
export function nextNumber(opened: readonly OpenedComparison[]): number {
  return Math.max(0, ...opened.map(({ entry }) => entry.k)) + 1;
}

/**
 * What is said to open a comparison on the newest day that holds both trials, and to take in their other days with it;
 * or why that cannot be.
 */
export function statementsToOpen(shared: readonly SharedDay[], stage: Stage, k: number, sameWork: boolean): readonly Statement[] | Obstacle {
  const [newest, ...others] = shared;
  if (newest === undefined) return sameWork ? 'same-work' : 'no-day';
  const { session, a, b } = newest;
  const { id } = session.entry;
  const zone = zoneIn(session.entry, stage);
  const baseline = session.recorded.baselines[stage] ?? null;
  if (zone === null) return 'no-zone';
  if (baseline === null) return 'no-baseline';
  const mound = session.recorded.mound;
  return [
    { mound, session: id, says: { kind: 'comparison-opened', session: id, k, stage, zone, a, b, baseline } },
    ...others.flatMap((day) => statementToAdd({ mound, openedIn: id, k }, day, stage)),
  ];
}

/** What is said to take another day into a comparison; nothing for a day without a baseline. */
export function statementToAdd({ mound, openedIn, k }: { readonly mound: string; readonly openedIn: string; readonly k: number }, { session, a, b }: SharedDay, stage: Stage): readonly Statement[] {
  const baseline = session.recorded.baselines[stage] ?? null;
  if (baseline === null) return [];
  return [{ mound, session: openedIn, says: { kind: 'comparison-continued', session: openedIn, k, day: { session: session.entry.id, a, b, baseline } } }];
}

/** The days that hold both trials and are not in their comparison yet, newest first. */
export function daysToAdd({ entry }: OpenedComparison, shared: readonly SharedDay[]): readonly SharedDay[] {
  const inIt = new Set(entry.days.map(({ session }) => session));
  return shared.filter(({ session }) => !inIt.has(session.entry.id)).map((day) => turned(day, entry.days[0]!, shared));
}

/** A comparison keeps the way round in which it was opened. */
function turned(day: SharedDay, first: { readonly session: string; readonly a: string }, shared: readonly SharedDay[]): SharedDay {
  const opening = shared.find(({ session }) => session.entry.id === first.session);
  return opening === undefined || opening.a === first.a ? day : { ...day, a: day.b, b: day.a };
}
