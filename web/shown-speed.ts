import { mayBeYouth } from '../core/coaching/age.ts';
import type { SessionView } from '../core/facts/views.ts';

/** A year by the calendar of a place; to make one is slow, and every throw asks. */
const YEARS = new Map<string, Intl.DateTimeFormat>();

function yearIn(atMs: number, timeZone: string): number {
  const years = YEARS.get(timeZone) ?? new Intl.DateTimeFormat('en', { year: 'numeric', timeZone });
  YEARS.set(timeZone, years);
  return Number(years.format(atMs));
}

/** Whether the athlete may be under 18, in the year of the session. */
export function mayBeUnder18({ athlete, openedAtMs, timeZone }: Pick<SessionView, 'athlete' | 'openedAtMs' | 'timeZone'>): boolean {
  return mayBeYouth(athlete.birthYear, yearIn(openedAtMs, timeZone));
}

/** Whether live speed is shown: not to an athlete who may be under 18, unless somebody asks. */
export function showsSpeed(session: Pick<SessionView, 'athlete' | 'openedAtMs' | 'timeZone'>, asked: boolean): boolean {
  return asked || !mayBeUnder18(session);
}

/** The setting of the address that asks for speed: speed=shown. */
export function speedAskedFor(search: string): boolean {
  return new URLSearchParams(search).get('speed') === 'shown';
}
