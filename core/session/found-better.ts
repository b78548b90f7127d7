import { SMALLEST_MISS } from '../coaching/comparison.ts';
import { comparisonAlpha, verdictOf } from '../coaching/verdict.ts';
import type { ComparisonEntry } from '../facts/advice-view.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { tallyOf } from '../statistics/tally.ts';

/** What one day of a comparison has to say once its session is closed: kept, because its throws may be on another mound. */
export interface ComparedDay {
  readonly k: number;
  readonly session: string;
  readonly day: IsoDay;
  /** Misses of the throws that count. */
  readonly a: readonly number[];
  readonly b: readonly number[];
  /** The trials as they are named over sessions. */
  readonly workA: string;
  readonly workB: string;
  readonly lastAtMs: number;
}

/** A trial that a comparison found better than another, over all of its days, and when its last throw of them was thrown. */
export interface FoundBetter {
  readonly stage: Stage;
  readonly work: string;
  readonly lastAtMs: number;
}

/** What comparisons have found better by the days that are known of them. */
export function foundBetter(comparisons: readonly ComparisonEntry[], compared: readonly ComparedDay[]): readonly FoundBetter[] {
  const byNumber = grouped(compared, ({ k }) => k);
  return comparisons.flatMap(({ k, stage }): FoundBetter[] => {
    const parts = byNumber.get(k) ?? [];
    const days = [...grouped(parts, ({ day }) => day).values()].map((sameDay) => ({ a: tallyOf(sameDay.flatMap(({ a }) => a)), b: tallyOf(sameDay.flatMap(({ b }) => b)) }));
    const { kind } = verdictOf(days, { alpha: comparisonAlpha(k), smallest: SMALLEST_MISS });
    const last = parts.toSorted((one, other) => one.lastAtMs - other.lastAtMs).at(-1);
    if (last === undefined || (kind !== 'better' && kind !== 'worse')) return [];
    return [{ stage, work: kind === 'better' ? last.workB : last.workA, lastAtMs: last.lastAtMs }];
  });
}

function grouped<One, Key>(all: readonly One[], key: (one: One) => Key): ReadonlyMap<Key, readonly One[]> {
  const groups = new Map<Key, One[]>();
  for (const one of all) {
    const group = groups.get(key(one));
    if (group === undefined) groups.set(key(one), [one]);
    else group.push(one);
  }
  return groups;
}
