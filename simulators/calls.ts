import type { CoachSays } from '../core/facts/coach.ts';
import type { MoundHead, SessionView } from '../core/facts/views.ts';
import { DEFAULT_DISTANCE_M } from '../core/facts/vocabulary.ts';
import type { SimulatedAthlete } from './athlete.ts';
import type { Wanted } from './plan.ts';

/** How a coach opens an ordinary bullpen for this athlete. */
export function opening(session: string, athlete: SimulatedAthlete, timeZone: string): CoachSays {
  return { kind: 'session-opened', session, athlete: athlete.profile, timeZone, stage: 'mound', distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full' };
}

/** The air that simulated throws fly in, for a mound of which nobody has said any. */
export function airCalls({ air }: Pick<MoundHead, 'air'>): CoachSays[] {
  if (air !== null) return [];
  return [{ kind: 'air-set', air: { where: 'indoors', temperatureC: 20, relativeHumidity: 0.5, height: { kind: 'pressure', pressurePa: 101_325 }, wind: null } }];
}

/** What a coach has to say before the throw that is wanted next, in this order; nothing where all of it carries over. */
export function callsBefore(wanted: Wanted, session: SessionView, athlete: SimulatedAthlete): CoachSays[] {
  return [...zoneOnceThereIsABaseline(session, athlete), ...callOf(wanted, session, athlete)];
}

function zoneOnceThereIsABaseline(session: SessionView, { target }: SimulatedAthlete): CoachSays[] {
  if (session.zone !== null || session.baseline.kind !== 'baseline') return [];
  return [{ kind: 'zone-set', session: session.id, ...target, reason: 'what this athlete works towards' }];
}

function callOf(wanted: Wanted, session: SessionView, athlete: SimulatedAthlete): CoachSays[] {
  if (wanted.kind === 'fastball') {
    const intent = athlete.profile.mainFastball;
    return session.intent === intent ? [] : [{ kind: 'intent-set', session: session.id, intent }];
  }
  const begun = session.trials[wanted.index];
  if (begun === undefined) return [{ kind: 'trial-begun', session: session.id, intent: 'changeup', ...athlete.tried[wanted.index], family: athlete.family }];
  if (session.trial?.letter !== begun.letter) return [{ kind: 'trial-resumed', session: session.id, trial: begun.letter }];
  return session.intent === begun.intent ? [] : [{ kind: 'intent-set', session: session.id, intent: begun.intent }];
}
