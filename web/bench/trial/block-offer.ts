import { mayThrow } from '../../../core/coaching/arm-care.ts';
import { gripAndTimeMixed, nextBlock } from '../../../core/coaching/blocks.ts';
import type { NextBlock } from '../../../core/facts/advice-view.ts';
import type { ArmCare } from '../../../core/facts/care-view.ts';
import type { MoundView, SessionView } from '../../../core/facts/views.ts';

/** The two trials that are thrown in alternating blocks, the earlier one first, and what comes next of them. */
export interface BlockOffer {
  readonly pair: readonly [string, string];
  /** Null where no more throws may be suggested. */
  readonly next: NextBlock | null;
  readonly gripAndTimeMixed: boolean;
}

/**
 * The trial that is on and the one thrown before it with the same intent, in this stage: they take turns. Null until there
 * are two. An arm that may not throw is offered nothing.
 */
export function blockOffer({ throws }: Pick<MoundView, 'throws'>, session: Pick<SessionView, 'trial' | 'trials' | 'stage'>, care: ArmCare): BlockOffer | null {
  const { trial, trials, stage } = session;
  if (trial === null) return null;
  const letters = new Set(trials.filter(({ intent }) => intent === trial.intent).map(({ letter }) => letter));
  const thrown = throws.flatMap((one) => (one.trial !== null && letters.has(one.trial) && one.stage === stage && one.excluded === null && one.problem === null ? [one.trial] : []));
  const other = thrown.findLast((letter) => letter !== trial.letter);
  if (other === undefined) return null;
  const pair = inOrder(trials.map(({ letter }) => letter), trial.letter, other);
  const turns = thrown.filter((letter) => pair.includes(letter));
  return { pair, next: mayThrow(care) ? nextBlock(care, turns, pair) : null, gripAndTimeMixed: gripAndTimeMixed(turns) };
}

function inOrder(letters: readonly string[], one: string, other: string): readonly [string, string] {
  return letters.indexOf(one) < letters.indexOf(other) ? [one, other] : [other, one];
}
