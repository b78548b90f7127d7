import type { CoachSays } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { DEFAULT_DISTANCE_M, STAGES, type Stage } from '../../../core/facts/vocabulary.ts';

/** The stages before and after this one; null at either end of the way. */
export function neighbours(stage: Stage): { readonly before: Stage | null; readonly after: Stage | null } {
  const at = STAGES.indexOf(stage);
  return { before: STAGES[at - 1] ?? null, after: STAGES[at + 1] ?? null };
}

/** What one tap says: that the present trial has passed this stage, and, where there is one, that the next begins. */
export function passing({ id, stage, effort, trial }: Pick<SessionView, 'id' | 'stage' | 'effort' | 'trial'>): CoachSays[] {
  const { after } = neighbours(stage);
  const passed: CoachSays[] = trial === null ? [] : [{ kind: 'gate-passed', session: id, stage, trial: trial.letter, reason: null }];
  return after === null ? passed : [...passed, goingTo({ id, effort }, after)];
}

/** Another stage, from its usual distance. */
export function goingTo({ id, effort }: Pick<SessionView, 'id' | 'effort'>, stage: Stage): CoachSays {
  return { kind: 'stage-set', session: id, stage, distanceM: DEFAULT_DISTANCE_M[stage], effort };
}

const MOST_SHARE = 0.95;

export type TypedShare = { readonly kind: 'share'; readonly above: number | null } | { readonly kind: 'wrong' };

/** A typed percentage: empty asks for no share, under 0 or over 95 is wrong. */
export function typedShare(percent: number | null, isEmpty: boolean): TypedShare {
  if (isEmpty) return { kind: 'share', above: null };
  if (percent === null || percent < 0 || percent > MOST_SHARE * 100) return { kind: 'wrong' };
  return { kind: 'share', above: percent / 100 };
}
