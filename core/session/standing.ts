import { DAYS_LOOKED_BACK } from '../coaching/arm-care.ts';
import { daysBetween } from '../coaching/calendar.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { BaselinesByStage } from './brought.ts';
import { newestOf } from './fastballs.ts';
import { onlySessions, sessionIn, type AthleteEntry, type Ledger } from './ledger.ts';

/** One day more than arm care looks back, because two sessions can be in two time zones. */
const DAYS_ASKED_ABOUT = DAYS_LOOKED_BACK + 1;

/**
 * As little of a mound's state as the facts to come go on from: without the closed sessions that are put away and whose days
 * nobody asks about any more. Folding on from it gives the same as folding on from the whole, as long as no fact speaks of a
 * session that is not in it.
 */
export function standing(ledger: Ledger): Ledger {
  const newest = newestDays(ledger);
  const stays = (id: string): boolean => {
    const session = sessionIn(ledger, id);
    const days = ledger.away[id]?.days;
    if (session === undefined || session.closedAtMs === null || ledger.throws[id] !== undefined) return session !== undefined;
    return days?.some(({ day }) => daysBetween(day, newest.get(session.athlete.id)!) <= DAYS_ASKED_ABOUT) ?? false;
  };
  const order = ledger.order.filter(stays);
  const goes = new Map<string, BaselinesByStage[]>();
  for (const id of ledger.order) {
    const put = ledger.away[id];
    if (put === undefined || stays(id)) continue;
    const athlete = sessionIn(ledger, id)!.athlete.id;
    goes.set(athlete, [...(goes.get(athlete) ?? []), put.baselines]);
  }
  return {
    ...ledger,
    ...onlySessions(ledger, order),
    away: pick(ledger.away, order),
    athletes: Object.fromEntries(Object.entries(ledger.athletes).map(([id, entry]) => [id, withBaselines(entry, goes.get(id) ?? [])])),
  };
}

/** The newest day on which each athlete has thrown, among those that are put away. */
function newestDays(ledger: Ledger): Map<string, IsoDay> {
  const newest = new Map<string, IsoDay>();
  for (const [id, { days }] of Object.entries(ledger.away)) {
    const athlete = sessionIn(ledger, id)!.athlete.id;
    for (const { day } of days) if (day > (newest.get(athlete) ?? '')) newest.set(athlete, day);
  }
  return newest;
}

/** What goes leaves its newest baselines with the athlete. */
function withBaselines(entry: AthleteEntry, gone: readonly BaselinesByStage[]): AthleteEntry {
  return gone.length === 0 ? entry : { ...entry, baselines: newestOf([entry.baselines, ...gone]) };
}

function pick<One>(all: Readonly<Record<string, One>>, keys: readonly string[]): Readonly<Record<string, One>> {
  return Object.fromEntries(keys.flatMap((key) => (all[key] === undefined ? [] : [[key, all[key]]])));
}
