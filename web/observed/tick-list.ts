import { observedOn, observedWeight } from '../../core/coaching/observed.ts';
import { familyOfTrial } from '../../core/coaching/tried-families.ts';
import type { SessionView } from '../../core/facts/views.ts';
import { OBSERVATIONS, type Observation } from '../../core/facts/vocabulary.ts';
import type { Speech } from '../words/speech.ts';

/** One thing to tick for the present trial, whether it stands ticked, and what that moves. */
export interface Tick {
  readonly what: Observation;
  readonly seen: boolean;
  readonly words: string;
  readonly moves: string;
}

/** Nothing before the first trial: what is seen is seen on a trial. */
export function tickList({ trial, observations }: Pick<SessionView, 'trial' | 'observations'>, { words: { observed, plan }, language }: Speech): readonly Tick[] {
  if (trial === null) return [];
  const ticked = observedOn(trial.letter, observations);
  const family = familyOfTrial(trial);
  const moves = (what: Observation): string => {
    if (family === null) return observed.noFamily;
    const weight = observedWeight({ family, what });
    const name = plan.families.family[family].toLocaleLowerCase(language);
    return weight === 0 ? observed.speaks.nothing : (weight > 0 ? observed.speaks.for : observed.speaks.against)(name);
  };
  return OBSERVATIONS.map((what) => ({ what, seen: ticked.includes(what), words: observed.what[what], moves: moves(what) }));
}
