import { DAYS_LOOKED_BACK } from '../coaching/arm-care.ts';
import { daysBetween } from '../coaching/calendar.ts';
import type { IsoDay, ThrowCount, ThrowingDay } from '../facts/care-view.ts';
import type { Ledger, Tags, ThrowEntry } from './ledger.ts';

/** Throws by day, stage and effort, the earliest day first. An excluded throw loads the arm like any other. */
export function daysOf(tags: readonly Tags[]): ThrowingDay[] {
  const days = new Map<IsoDay, Map<string, ThrowCount>>();
  for (const { day, stage, effort } of tags) {
    const kinds = days.get(day) ?? new Map<string, ThrowCount>();
    days.set(day, kinds);
    const key = `${stage}/${effort}`;
    kinds.set(key, { stage, effort, count: (kinds.get(key)?.count ?? 0) + 1 });
  }
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([day, kinds]) => ({ day, throws: [...kinds.values()] }));
}

/** The athlete's days that today can still ask about, from this mound and from what was told of others. */
export function daysBefore(ledger: Ledger, athlete: string, today: IsoDay): ThrowingDay[] {
  return recentDays([...daysHere(ledger, athlete), ...(ledger.elsewhere[athlete]?.days ?? [])], today);
}

/** The athlete's days on this mound. */
export function daysHere(ledger: Ledger, athlete: string): ThrowingDay[] {
  const own = Object.values(ledger.throws).filter(({ session }) => session !== null && ledger.sessions[session]?.athlete.id === athlete);
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
