import type { MayThrow } from '../facts/care-view.ts';
import { anytimeShareLowerBound } from '../statistics/share-lower-bound.ts';

/** What one trial did on one day in one stage, feedback or none. */
export interface WorkedDay {
  readonly firstAtMs: number;
  readonly lastAtMs: number;
  readonly hits: number;
  readonly judged: number;
  /** A comparison found its miss smaller than another trial's that day. */
  readonly better: boolean;
  /** Thrown while feedback was off. */
  readonly quietThrows: number;
}

export type SetReason = 'found-better' | 'gate-near';

/** Practice is not learning: what was learned shows after a night, without feedback. */
const LATER_MS = 24 * 60 * 60 * 1000;
/** Throws of a set, and the fewest that count as one. House rules: two blocks, and one. */
const SET_SIZE = 10;
const FEWEST_OF_SET = 5;
/** A gate is near when so many more on target, and none off, would meet it. House rule: one block. */
const NEAR_BY = 5;

/**
 * Why a set without feedback is worth throwing with a trial that was worked on before; null where it is not: less than 24
 * hours have passed, or since the last such set nothing was found better and no gate came near. A gate that asks for
 * comfort alone is never near: comfort is not learned.
 * @param days earlier days of the trial in one stage, oldest first
 */
export function reasonForSet(days: readonly WorkedDay[], shareAbove: number | null, nowMs: number): SetReason | null {
  const last = days.at(-1);
  if (last === undefined || !isLater(last, nowMs)) return null;
  const since = days.slice(1 + days.findLastIndex((day, index) => index > 0 && isSet(days[index - 1]!, day)));
  if (since.length === 0) return null;
  if (since.some(({ better }) => better)) return 'found-better';
  return shareAbove !== null && isNear(days, shareAbove) ? 'gate-near' : null;
}

/** Whether something thrown now is thrown 24 hours or more after a day's last throw. */
export function isLater({ lastAtMs }: Pick<WorkedDay, 'lastAtMs'>, nowMs: number): boolean {
  return nowMs - lastAtMs >= LATER_MS;
}

/** Throws of the set that an arm may still throw; null where they are too few to show anything. After pain it cannot be asked for. */
export function setSize({ left }: MayThrow): number | null {
  return left < FEWEST_OF_SET ? null : Math.min(SET_SIZE, left);
}

function isSet(before: WorkedDay, { firstAtMs, quietThrows }: WorkedDay): boolean {
  return quietThrows >= FEWEST_OF_SET && isLater(before, firstAtMs);
}

function isNear(days: readonly WorkedDay[], shareAbove: number): boolean {
  const sum = (of: (day: WorkedDay) => number): number => days.reduce((total, day) => total + of(day), NEAR_BY);
  return anytimeShareLowerBound(sum(({ hits }) => hits), sum(({ judged }) => judged)) > shareAbove;
}
