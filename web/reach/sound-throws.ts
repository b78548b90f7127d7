import type { MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import type { Intent } from '../../core/facts/vocabulary.ts';

/** Throws that a plan may rest on: of the stage, neither excluded nor contradicting themselves. */
export function soundThrows({ throws }: MoundView, { stage }: SessionView): readonly ThrowView[] {
  return throws.filter((thrown) => thrown.stage === stage && thrown.excluded === null && thrown.problem === null);
}

/** Throws of the pitch that a family is thrown as. */
export function thrownAs(view: MoundView, session: SessionView, intent: Intent): readonly ThrowView[] {
  return soundThrows(view, session).filter((thrown) => !thrown.fastball && thrown.intent === intent);
}
