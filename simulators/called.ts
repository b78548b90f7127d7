import type { Grip } from '../core/facts/coach.ts';
import type { MoundHead, SessionView } from '../core/facts/views.ts';
import { DEFAULT_DISTANCE_M, type Intent } from '../core/facts/vocabulary.ts';
import type { SimulatedAthlete } from './athlete.ts';
import type { Wanted } from './plan.ts';
import type { Situation } from './throw.ts';

/** What the athlete believes is wanted of the next throw. */
export interface Called {
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly situation: Situation;
}

/** The session that has the mound; null when nobody has opened one. */
export function sessionOn(head: MoundHead): SessionView | null {
  return head.session !== null && head.session.active && head.session.closedAtMs === null ? head.session : null;
}

/** What the coach's screen says now; a session in which nothing was said yet is thrown fastballs. */
export function calledBy(session: SessionView): Called {
  const { trial, distanceM, effort } = session;
  const intent = session.intent ?? session.athlete.mainFastball;
  return { intent, grip: trial?.intent === intent ? trial.grip : null, situation: { distanceM, effort } };
}

/** What an athlete throws to whom no coach has said anything. */
export function calledByHabit(wanted: Wanted, athlete: SimulatedAthlete): Called {
  const situation: Situation = { distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full' };
  if (wanted.kind === 'fastball') return { intent: athlete.profile.mainFastball, grip: null, situation };
  return { intent: 'changeup', grip: athlete.tried[wanted.index].grip, situation };
}

/** Who of the simulated athletes throws for the athlete of a session: the same, else one with the same hand. `present` goes first. */
export function standIn(session: SessionView, present: SimulatedAthlete, all: readonly SimulatedAthlete[]): SimulatedAthlete {
  const { id, hand } = session.athlete;
  const known = all.find(({ profile }) => profile.id === id);
  return known ?? [present, ...all].find(({ profile }) => profile.hand === hand) ?? present;
}
