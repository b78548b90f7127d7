import { rankFamilies, type FamilyAdvice } from '../../core/coaching/families.ts';
import type { FamilyInput } from '../../core/coaching/family-reasons.ts';
import { fastballEfficiency, type FastballEfficiency } from '../../core/coaching/fastball-efficiency.ts';
import { triedFamilies } from '../../core/coaching/tried-families.ts';
import type { Missing, MoundView, SessionView, ThrowView, TrialView } from '../../core/facts/views.ts';
import type { Family, Intent } from '../../core/facts/vocabulary.ts';

/** What the throws of this session's stage say about the families. */
export interface PlanEvidence {
  readonly efficiency: FastballEfficiency;
  readonly advice: FamilyAdvice;
  /** Why the movement of this stage's fastballs is not known; null where it is, or where none was thrown. */
  readonly noMovement: Missing | null;
}

/** Throws that a plan may rest on: of the stage, neither excluded nor contradicting themselves. */
function soundThrows({ throws }: MoundView, { stage }: SessionView): readonly ThrowView[] {
  return throws.filter((thrown) => thrown.stage === stage && thrown.excluded === null && thrown.problem === null);
}

/** Throws of the pitch that a family is thrown as. */
export function thrownAs(view: MoundView, session: SessionView, intent: Intent): readonly ThrowView[] {
  return soundThrows(view, session).filter((thrown) => !thrown.fastball && thrown.intent === intent);
}

export function evidenceOf(view: MoundView, session: SessionView): PlanEvidence {
  const thrown = soundThrows(view, session);
  const fastballs = thrown.filter(({ fastball }) => fastball);
  const efficiency = fastballEfficiency(fastballs.map((one) => one.efficiency));
  const { baseline, comfort, trial, trials, athlete } = session;
  const advice = rankFamilies({
    efficiency,
    fastball: baseline.kind === 'baseline' ? baseline : null,
    mainFastball: athlete.mainFastball,
    // A device without a measured axis sees as little of a seam effect as one that does not see the flight.
    sight: seamEffectVisible(view) ? 'full-flight' : 'spin-only',
    seamEffect: seamEffectIn(trials),
    tried: triedFamilies(trials, thrown, comfort === null || trial === null ? null : { trial: trial.letter, comfortable: comfort.comfortable }),
  });
  return { efficiency, advice, noMovement: movementMissing(fastballs) };
}

/** Whether this device can show a seam effect. Before the first throw nobody knows it, and nothing is said against it. */
export function seamEffectVisible({ source }: MoundView): boolean {
  return source === null || (source.sight === 'full-flight' && source.axis === 'measured');
}

/** Over the trials that were begun as seam effect: seen once is seen, else what the newest of them says. */
function seamEffectIn(trials: readonly TrialView[]): FamilyInput['seamEffect'] {
  const kinds = trials.flatMap(({ family, seamEffect }) => (family === 'seam-effect' && seamEffect.kind !== 'not-visible' ? [seamEffect.kind] : []));
  return kinds.includes('seen') ? 'seen' : (kinds.at(-1) ?? null);
}

function movementMissing(fastballs: readonly ThrowView[]): Missing | null {
  for (const { verticalM, armSideM } of fastballs) {
    if (typeof verticalM !== 'number') return verticalM;
    if (typeof armSideM !== 'number') return armSideM;
  }
  return null;
}

/** The family that the screen opens with: that of the present trial, else the one that fits best. */
export function familyToOpen({ ranking }: FamilyAdvice, { trial }: SessionView): Family {
  return trial?.family ?? ranking[0]!.family;
}
