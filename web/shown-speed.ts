import { mayBeYouth } from '../core/coaching/age.ts';
import type { SessionView } from '../core/facts/views.ts';

/** Whether the athlete may be under 18, in the year of the session. */
export function mayBeUnder18({ athlete, openedAtMs, timeZone }: Pick<SessionView, 'athlete' | 'openedAtMs' | 'timeZone'>): boolean {
  const year = Number(new Intl.DateTimeFormat('en', { year: 'numeric', timeZone }).format(openedAtMs));
  return mayBeYouth(athlete.birthYear, year);
}

/** Whether live speed is shown: not to an athlete who may be under 18, unless somebody asks. */
export function showsSpeed(session: Pick<SessionView, 'athlete' | 'openedAtMs' | 'timeZone'>, asked: boolean): boolean {
  return asked || !mayBeUnder18(session);
}

/** The setting of the address that asks for speed: speed=shown. */
export function speedAskedFor(search: string): boolean {
  return new URLSearchParams(search).get('speed') === 'shown';
}
