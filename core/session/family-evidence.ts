import { rankFamilies, type FamilyAdvice } from '../coaching/families.ts';
import type { FamilyInput } from '../coaching/family-reasons.ts';
import { fastballEfficiency, type FastballEfficiency } from '../coaching/fastball-efficiency.ts';
import { observedFamilies } from '../coaching/observed.ts';
import { triedFamilies } from '../coaching/tried-families.ts';
import { triedOverDays } from '../coaching/tried-over-days.ts';
import type { MoundView, SessionView, TrialView } from '../facts/views.ts';

/** What is known of an athlete's families in the stage of a session, and what follows from it. */
export interface FamilyEvidence {
  readonly efficiency: FastballEfficiency;
  readonly advice: FamilyAdvice;
}

/** From the throws of the session, and from what the days before it have shown of each family. */
export function familyEvidence(view: MoundView, session: SessionView): FamilyEvidence {
  const { baseline, comfort, trial, trials, athlete, stage, triedBefore, observations } = session;
  const thrown = view.throws.filter((one) => one.stage === stage && one.excluded === null && one.problem === null);
  const efficiency = fastballEfficiency(thrown.filter(({ fastball }) => fastball).map((one) => one.efficiency));
  const today = triedFamilies(trials, thrown, comfort === null || trial === null ? null : { trial: trial.letter, comfortable: comfort.comfortable });
  const advice = rankFamilies({
    efficiency,
    fastball: baseline.kind === 'baseline' ? baseline : null,
    mainFastball: athlete.mainFastball,
    // A device without a measured axis sees as little of a seam effect as one that does not see the flight.
    sight: seamEffectVisible(view) ? 'full-flight' : 'spin-only',
    seamEffect: seamEffectIn(trials),
    tried: triedOverDays([triedBefore, today]),
    observed: observedFamilies(trials, observations),
  });
  return { efficiency, advice };
}

/** Whether this device can show a seam effect. Before the first throw nobody knows it, and nothing is said against it. */
export function seamEffectVisible({ source }: Pick<MoundView, 'source'>): boolean {
  return source === null || (source.sight === 'full-flight' && source.axis === 'measured');
}

/** Over the trials that were begun as seam effect: seen once is seen, else what the newest of them says. */
function seamEffectIn(trials: readonly TrialView[]): FamilyInput['seamEffect'] {
  const kinds = trials.flatMap(({ family, seamEffect }) => (family === 'seam-effect' && seamEffect.kind !== 'not-visible' ? [seamEffect.kind] : []));
  return kinds.includes('seen') ? 'seen' : (kinds.at(-1) ?? null);
}
