import type { IsoDay, MayThrow } from '../facts/care-view.ts';
import type { TargetZone } from '../facts/coach.ts';
import { spreadChanged, spreadRatio } from '../statistics/anytime-difference.ts';
import { effectiveOf } from '../statistics/blocked-design.ts';
import { blockedDifference, type ComparedDay } from '../statistics/blocked-difference.ts';
import { acrossZone, type AcrossZone } from './across-zone.ts';
import { gripAndTimeMixed } from './blocks.ts';
import { byDay, daysOf, ofTrial, type ComparedThrow, type Valued } from './compared-throw.ts';
import { neighboursAlike } from './neighbours.ts';
import { outlookOf, type Outlook } from './outlook.ts';
import { singleMeasures, type SingleMeasures } from './single-measures.ts';
import { slipsAmong } from './slips.ts';
import { missOf } from './target.ts';
import { comparisonAlpha, verdictOf, type Rule, type Verdict } from './verdict.ts';

/** On the miss, which counts in smallest differences that matter. House rule. */
export const SMALLEST_MISS = 1;

/** What a comparison fixed when it was opened, and what today leaves. */
export interface ComparisonTerms {
  /** k: the athlete's k-th comparison. */
  readonly number: number;
  readonly zone: TargetZone;
  readonly today: IsoDay;
  /** Null where no further throw may be advised; then no number of throws is told. */
  readonly mayThrow: MayThrow | null;
  /** On the miss; 1 unless the coach set another. */
  readonly smallestMiss?: number;
}

interface DayDifference {
  readonly day: IsoDay;
  /** Of the miss, B minus A. */
  readonly difference: number;
  readonly countA: number;
  readonly countB: number;
}

/** Everything a screen says about trial B against trial A, as data. */
export interface Comparison {
  readonly number: number;
  readonly alpha: number;
  readonly smallestMiss: number;
  /** On the miss. */
  readonly verdict: Verdict;
  /** The verdict with the excluded throws, where it is another one; else null. */
  readonly withExcluded: Verdict | null;
  readonly outlook: Outlook;
  readonly days: readonly DayDifference[];
  /** B was better on one day and worse on another. */
  readonly signsDiffer: boolean;
  /** SD of the miss of B over that of A; null while unknown. */
  readonly spreadRatio: number | null;
  /** The mean comparison is less sure. */
  readonly spreadChanged: boolean;
  /** A was thrown and then B, so tiring or warming up looks like a grip. */
  readonly gripAndTimeMixed: boolean;
  /** Neighbouring throws resemble each other: more false alarms than promised. */
  readonly neighboursAlike: boolean;
  /** Places of throws that lie far from the others of their trial and day; flagged, never left out. */
  readonly slips: readonly number[];
  /** A shift across the zone that the miss does not see. */
  readonly acrossZone: AcrossZone;
  readonly measures: SingleMeasures;
}

/**
 * Compares two trials of one stage from all of their throws, in the order thrown. Throws of days that hold one of them
 * only do not count in the miss, and are left out throughout.
 */
export function compareTrials(all: readonly ComparedThrow[], terms: ComparisonTerms): Comparison {
  const { number, zone, today, smallestMiss = SMALLEST_MISS } = terms;
  const rule: Rule = { alpha: comparisonAlpha(number), smallest: smallestMiss };
  const kept = all.filter(({ excluded }) => !excluded);
  const days = daysOf(kept);
  const misses = missesOf(kept, zone);
  const compared = byDay(misses, days);
  const verdict = verdictOf(compared, rule);
  const dayDifferences = days.flatMap((day, i) => differenceOn(day, compared[i]!));
  const usedDays = new Set(dayDifferences.map(({ day }) => day));
  const used = kept.filter(({ day }) => usedDays.has(day));
  const found = blockedDifference(compared);
  return {
    number,
    alpha: rule.alpha,
    smallestMiss,
    verdict,
    withExcluded: kept.length === all.length ? null : otherwise(verdict, verdictOf(byDay(missesOf(all, zone), daysOf(all)), rule)),
    outlook: outlookOf(compared, rule, { index: days.includes(today) ? days.indexOf(today) : null, mayThrow: terms.mayThrow }),
    days: dayDifferences,
    signsDiffer: dayDifferences.some(({ difference }) => difference < 0) && dayDifferences.some(({ difference }) => difference > 0),
    spreadRatio: found === null ? null : spreadRatio(found),
    spreadChanged: found !== null && spreadChanged(found),
    gripAndTimeMixed: mixedOverall(used, dayDifferences),
    neighboursAlike: neighboursAlike(misses.filter(({ day }) => usedDays.has(day))),
    slips: slipsAmong(misses),
    acrossZone: used.length === 0 ? null : acrossZone(ofTrial(used, 'a'), ofTrial(used, 'b'), zone),
    measures: singleMeasures(kept, rule.alpha),
  };
}

const missesOf = (throws: readonly ComparedThrow[], zone: TargetZone): Valued[] =>
  throws.map((thrown) => ({ place: thrown.place, day: thrown.day, trial: thrown.trial, value: missOf(thrown, zone).size }));

const otherwise = (verdict: Verdict, other: Verdict): Verdict | null => (verdict.kind === other.kind ? null : other);

const differenceOn = (day: IsoDay, { a, b }: ComparedDay): DayDifference[] =>
  a.count === 0 || b.count === 0 ? [] : [{ day, difference: b.mean - a.mean, countA: a.count, countB: b.count }];

/** Days on which one trial came wholly before the other, the same one each time, carry more than half of the comparison. */
function mixedOverall(throws: readonly ComparedThrow[], days: readonly DayDifference[]): boolean {
  let [all, leaning] = [0, 0];
  for (const { day, countA, countB } of days) {
    const thrown = throws.filter((one) => one.day === day).map(({ trial }) => trial);
    const weight = effectiveOf({ a: countA, b: countB });
    all += weight;
    if (gripAndTimeMixed(thrown)) leaning += thrown[0] === 'a' ? weight : -weight;
  }
  return Math.abs(leaning) * 2 > all;
}
