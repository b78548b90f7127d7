import { DAYS_LOOKED_BACK } from '../coaching/arm-care.ts';
import { daysBetween } from '../coaching/calendar.ts';
import type { IsoDay, ThrowCount, ThrowingDay } from '../facts/care-view.ts';
import { sessionIn, type Ledger, type Tags, type ThrowEntry, type Thrown } from './ledger.ts';
import type { PlacedCount } from './placed-count.ts';

/** What throws say about the days of whoever has them. An excluded throw loads the arm like any other. */
export function placedCounts(entries: Iterable<ThrowEntry>): PlacedCount[] {
  const counts = new Map<string, PlacedCount>();
  for (const { place, session, tags } of entries) {
    const own = session === null ? undefined : tags[session];
    if (own === undefined) continue;
    const { day, stage, effort } = own;
    const key = `${day} ${stage} ${effort}`;
    const known = counts.get(key);
    counts.set(key, known === undefined ? { day, stage, effort, count: 1, place } : { ...known, count: known.count + 1, place: Math.min(known.place, place) });
  }
  return [...counts.values()];
}

/** Throws by day, stage and effort, the earliest day first; within a day in the order in which they came. */
export function daysOf(counts: readonly PlacedCount[]): ThrowingDay[] {
  const days = new Map<IsoDay, readonly ThrowCount[]>();
  for (const { day, stage, effort, count } of counts.toSorted((a, b) => a.place - b.place)) days.set(day, withCount(days.get(day) ?? [], { stage, effort, count }));
  return inOrder([...days].map(([day, throws]) => ({ day, throws })));
}

export function inOrder(days: readonly ThrowingDay[]): ThrowingDay[] {
  return days.toSorted((a, b) => (a.day < b.day ? -1 : 1));
}

/** One throw more. */
export function withTags(days: readonly ThrowingDay[], { day, stage, effort }: Pick<Tags, 'day' | 'stage' | 'effort'>): readonly ThrowingDay[] {
  const index = days.findIndex((one) => one.day === day);
  const counted = withCount(days[index]?.throws ?? [], { stage, effort, count: 1 });
  return index === -1 ? [...days, { day, throws: counted }] : days.with(index, { day, throws: counted });
}

function withCount(throws: readonly ThrowCount[], more: ThrowCount): readonly ThrowCount[] {
  const index = throws.findIndex((one) => one.stage === more.stage && one.effort === more.effort);
  if (index === -1) return [...throws, more];
  return throws.with(index, { ...more, count: throws[index]!.count + more.count });
}

/** The athlete's days that today can still ask about, from this mound and from what was told of others. */
export function daysBefore(ledger: Ledger, athlete: string, today: IsoDay): ThrowingDay[] {
  return recentDays([...daysHere(ledger, athlete), ...(ledger.elsewhere[athlete]?.days ?? [])], today);
}

/** The athlete's days on this mound. */
export function daysHere(ledger: Ledger, athlete: string): ThrowingDay[] {
  return [...(ledger.athletes[athlete]?.arm.days ?? []), ...daysOf(countsHere(ledger, athlete))];
}

/** What the athlete's throws that a ledger has, at hand or put away, say about days. */
function countsHere(ledger: Ledger, athlete: string): PlacedCount[] {
  const isOwn = (session: string): boolean => sessionIn(ledger, session)?.athlete.id === athlete;
  return [
    ...Object.entries(ledger.throws).flatMap(([session, thrown]) => (isOwn(session) ? countsOf(thrown) : [])),
    ...Object.entries(ledger.away).flatMap(([session, { days }]) => (isOwn(session) ? days : [])),
  ];
}

/** What the throws of one session say about days. */
export function countsOf(thrown: Thrown): PlacedCount[] {
  return placedCounts(thrown.flat());
}

/** Those of the last week up to the newest: no later day asks about an older one. */
export function lastDays(days: readonly ThrowingDay[]): ThrowingDay[] {
  const newest = days.map(({ day }) => day).sort().at(-1);
  return newest === undefined ? [] : recentDays(days, newest);
}

/** The days that today can still ask about. */
function recentDays(days: readonly ThrowingDay[], today: IsoDay): ThrowingDay[] {
  return days.filter(({ day }) => daysBetween(day, today) <= DAYS_LOOKED_BACK);
}
