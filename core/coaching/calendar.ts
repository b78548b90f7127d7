import type { IsoDay } from '../facts/care-view.ts';

const DAY_MS = 86_400_000;

/** The day so many days later. @throws RangeError for what is no day */
export function dayAfter(day: IsoDay, days: number): IsoDay {
  return new Date(dayNumber(day) * DAY_MS + days * DAY_MS).toISOString().slice(0, 10);
}

/** Days from one to the other; negative when the other is earlier. */
export function daysBetween(from: IsoDay, to: IsoDay): number {
  return dayNumber(to) - dayNumber(from);
}

export function yearOf(day: IsoDay): number {
  return Number(day.slice(0, 4));
}

/** Counted in UTC, where every day has 24 hours: a calendar day has no zone of its own. */
function dayNumber(day: IsoDay): number {
  const ms = Date.parse(`${day}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(ms)) throw new RangeError(`${day} is not a calendar day such as 2026-04-30`);
  return ms / DAY_MS;
}
