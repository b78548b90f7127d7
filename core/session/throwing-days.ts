import { DAYS_LOOKED_BACK } from '../coaching/arm-care.ts';
import { daysBetween } from '../coaching/calendar.ts';
import type { IsoDay, ThrowCount, ThrowingDay } from '../facts/care-view.ts';
import type { Ledger, Tags, ThrowEntry } from './ledger.ts';

/** Throws by day, stage and effort, the earliest day first. An excluded throw loads the arm like any other. */
export function daysOf(tags: readonly Tags[]): ThrowingDay[] {
  return inOrder(tags.reduce(withTags, []));
}

export function inOrder(days: readonly ThrowingDay[]): ThrowingDay[] {
  return days.toSorted((a, b) => (a.day < b.day ? -1 : 1));
}

/** One throw more. */
export function withTags(days: readonly ThrowingDay[], { day, stage, effort }: Pick<Tags, 'day' | 'stage' | 'effort'>): readonly ThrowingDay[] {
  const index = days.findIndex((one) => one.day === day);
  if (index === -1) return [...days, { day, throws: [{ stage, effort, count: 1 }] }];
  return days.with(index, { day, throws: withCount(days[index]!.throws, stage, effort) });
}

function withCount(throws: readonly ThrowCount[], stage: Tags['stage'], effort: Tags['effort']): readonly ThrowCount[] {
  const index = throws.findIndex((one) => one.stage === stage && one.effort === effort);
  if (index === -1) return [...throws, { stage, effort, count: 1 }];
  return throws.with(index, { stage, effort, count: throws[index]!.count + 1 });
}

/** The athlete's days that today can still ask about, from this mound and from what was told of others. */
export function daysBefore(ledger: Ledger, athlete: string, today: IsoDay): ThrowingDay[] {
  return recentDays([...daysHere(ledger, athlete), ...(ledger.elsewhere[athlete]?.days ?? [])], today);
}

/** The athlete's days on this mound. */
export function daysHere(ledger: Ledger, athlete: string): ThrowingDay[] {
  const own = Object.entries(ledger.throws).flatMap(([session, thrown]) => (ledger.sessions[session]?.athlete.id === athlete ? thrown.flat() : [])).sort((a, b) => a.place - b.place);
  return [...(ledger.athletes[athlete]?.arm.days ?? []), ...daysOf(tagsOf(own))];
}

/** What throws say about the days of whoever has them. */
export function tagsOf(entries: readonly ThrowEntry[]): Tags[] {
  return entries.flatMap((entry) => (entry.session === null ? [] : (entry.tags[entry.session] ?? [])));
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
