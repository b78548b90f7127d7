import type { Athlete } from '../facts/coach.ts';
import type { AthleteEntry } from './ledger.ts';
import { NO_PLANS } from './planned.ts';
import { NOTHING_BROUGHT } from './told.ts';

/** An athlete of whom nothing has been said yet. */
export function newAthlete(athlete: Athlete): AthleteEntry {
  return { athlete, targets: {}, baselines: {}, arm: NOTHING_BROUGHT, plans: NO_PLANS };
}
