import type { ObservationView } from '../facts/advice-view.ts';
import type { TrialView } from '../facts/views.ts';
import type { Family, Observation } from '../facts/vocabulary.ts';
import { familyOfTrial } from './tried-families.ts';

/** What the coach has seen on a trial of a family. */
export interface ObservedFamily {
  readonly family: Family;
  readonly what: Observation;
}

/** What stands ticked for a trial: of each observation the last word counts. */
export function observedOn(letter: string, observations: readonly ObservationView[]): readonly Observation[] {
  const last = new Map(observations.filter(({ trial }) => trial === letter).map(({ what, seen }) => [what, seen]));
  return [...last].flatMap(([what, seen]) => (seen ? [what] : []));
}

/** What stands ticked for the trials of each family; for a trial that nobody gave a family it says nothing of one. */
export function observedFamilies(trials: readonly Pick<TrialView, 'letter' | 'family' | 'intent'>[], observations: readonly ObservationView[]): readonly ObservedFamily[] {
  const found = new Map<string, ObservedFamily>();
  for (const trial of trials) {
    const family = familyOfTrial(trial);
    if (family === null) continue;
    for (const what of observedOn(trial.letter, observations)) found.set(`${family}/${what}`, { family, what });
  }
  return [...found.values()];
}

/**
 * What an observation on a family's own trial adds to its fit, in log-odds: above 0 it speaks for the family, at 0 it is known and
 * moves nothing. Trade knowledge says which way, for the seam effect alone; how much is a house rule.
 */
export function observedWeight({ family, what }: ObservedFamily): number {
  return family === 'seam-effect' ? SEAM_EFFECT[what] : 0;
}

/** Forcing the hand over spoils it, a slight cut is welcome, and from straight behind the ball it is a slower fastball. */
const SEAM_EFFECT: Readonly<Record<Observation, number>> = { 'forced-turn': -0.4, 'slight-cut': 0.3, 'straight-behind': -0.4, 'loose-wrist-and-forearm': 0 };
