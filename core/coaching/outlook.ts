import type { MayThrow } from '../facts/care-view.ts';
import { anytimeRadiusOf } from '../statistics/anytime-difference.ts';
import { anytimeRadius } from '../statistics/anytime-t.ts';
import { blockedDesign, type BlockedDesign, type DayCounts } from '../statistics/blocked-design.ts';
import { blockedDifference, type ComparedDay } from '../statistics/blocked-difference.ts';
import { FEWEST_THROWS, verdictOf, type Rule } from './verdict.ts';

/** More throws of each than this are no advice. */
const MOST = 500;

/** What it would take to hear more, at the present difference and spread. */
export type Outlook =
  | { readonly kind: 'settled' }
  /** After pain, soreness or the day's last throw: no number of further throws exists. */
  | { readonly kind: 'stopped' }
  | {
      readonly kind: 'more';
      /** `verdict`: until the first interval; `settled`: until it is better, worse or no difference that matters. */
      readonly until: 'verdict' | 'settled';
      /** Least equal number of each; null where no number up to 500 is enough or no spread is known yet. */
      readonly each: number | null;
      /** Of B alone; null where A is too short for that. */
      readonly ofBAlone: number | null;
      /** Whether `each` of both fits into what is left of the day and the planned bullpen; else carry on next time. */
      readonly fitsToday: boolean;
    };

export interface Today {
  /** Place of today among the days; null when neither trial has been thrown today. */
  readonly index: number | null;
  /** Null where no further throw may be advised. */
  readonly mayThrow: MayThrow | null;
}

/** How many more throws of each would settle a comparison, and whether they may be thrown today. */
export function outlookOf(days: readonly ComparedDay[], rule: Rule, { index, mayThrow }: Today): Outlook {
  const { kind } = verdictOf(days, rule);
  if (kind !== 'too-few' && kind !== 'not-settled') return { kind: 'settled' };
  if (mayThrow === null) return { kind: 'stopped' };
  const enough = kind === 'too-few' ? sayable(days, rule) : settled(days, rule);
  const designWith = (moreA: number, moreB: number): BlockedDesign => blockedDesign(withMore(days, index, moreA, moreB));
  const each = enough === null ? null : leastWhere((more) => enough(designWith(more, more)));
  const ofBAlone = enough === null ? null : leastWhere((more) => enough(designWith(0, more)));
  const until = kind === 'too-few' ? 'verdict' : 'settled';
  return { kind: 'more', until, each, ofBAlone, fitsToday: each !== null && 2 * each <= mayThrow.left };
}

type Enough = (design: BlockedDesign) => boolean;

/** Enough throws for any interval; null where it is not throws that lack but scatter. */
function sayable(days: readonly ComparedDay[], { alpha }: Rule): Enough | null {
  const enough: Enough = ({ countA, countB, effectiveN, freedom }) =>
    Math.min(countA, countB) >= FEWEST_THROWS && anytimeRadius({ effectiveN, freedom, alpha }) < Infinity;
  return enough(blockedDesign(countsOf(days))) ? null : enough;
}

/** The shrunken difference beyond the interval's reach, or the whole interval within what matters. */
function settled(days: readonly ComparedDay[], { alpha, smallest }: Rule): Enough | null {
  const found = blockedDifference(days);
  const verdict = verdictOf(days, { alpha, smallest });
  if (found === null || verdict.kind === 'too-few') return null;
  const [shrunken, raw] = [Math.abs(verdict.shrunken), Math.abs(found.difference)];
  return (design) => {
    const radius = anytimeRadiusOf(found, design, alpha);
    return shrunken > radius || raw + radius <= smallest;
  };
}

const countsOf = (days: readonly ComparedDay[]): DayCounts[] => days.map(({ a, b }) => ({ a: a.count, b: b.count }));

function withMore(days: readonly ComparedDay[], today: number | null, moreA: number, moreB: number): DayCounts[] {
  const counts = countsOf(days);
  if (today === null) return [...counts, { a: moreA, b: moreB }];
  return counts.map(({ a, b }, day) => (day === today ? { a: a + moreA, b: b + moreB } : { a, b }));
}

/** The least number from 1 to 500; every throw more narrows the interval, so what is enough stays enough. */
function leastWhere(enough: (more: number) => boolean): number | null {
  if (!enough(MOST)) return null;
  let [lacking, found] = [0, MOST];
  while (found - lacking > 1) {
    const middle = (lacking + found) >> 1;
    if (enough(middle)) found = middle;
    else lacking = middle;
  }
  return found;
}
