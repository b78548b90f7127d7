import type { TriedFamily } from '../facts/advice-view.ts';
import type { SeparationView, TrialView, ThrowView } from '../facts/views.ts';
import { FAMILIES, type Family } from '../facts/vocabulary.ts';
import { moments } from '../statistics/moments.ts';

type Trial = Pick<TrialView, 'letter' | 'family' | 'intent'>;

interface Thrown extends Pick<ThrowView, 'trial' | 'excluded' | 'problem'> {
  readonly miss: { readonly size: number } | null;
  readonly separation: Pick<SeparationView, 'verticalM' | 'armSideM'> | null;
}

/**
 * What the trials of a session have shown of each family that was tried. A trial counts for the family that was said at its
 * beginning, a split for the split in any case; of a changeup that nobody gave a family nobody knows it, so it counts for none.
 * @param thrown of one stage
 * @param comfort what the athlete says of the present trial
 */
export function triedFamilies(trials: readonly Trial[], thrown: readonly Thrown[], comfort: { readonly trial: string; readonly comfortable: boolean } | null): TriedFamily[] {
  return FAMILIES.flatMap((family): TriedFamily[] => {
    const letters = new Set(trials.filter((trial) => familyOfTrial(trial) === family).map(({ letter }) => letter));
    const own = thrown.filter(({ trial, excluded, problem }) => trial !== null && letters.has(trial) && excluded === null && problem === null);
    if (own.length === 0) return [];
    return [{
      family,
      throws: own.length,
      meanMiss: moments(own.flatMap(({ miss }) => (miss === null ? [] : [miss.size])))?.mean ?? null,
      separation: meanSeparation(own),
      comfortable: comfort !== null && letters.has(comfort.trial) ? comfort.comfortable : null,
    }];
  });
}

/** The family that a trial counts for; null where nobody said. */
export function familyOfTrial({ family, intent }: Pick<Trial, 'family' | 'intent'>): Family | null {
  return family ?? (intent === 'split' ? 'split' : null);
}

function meanSeparation(thrown: readonly Thrown[]): TriedFamily['separation'] {
  const known = thrown.flatMap(({ separation }) => {
    if (separation === null || typeof separation.verticalM !== 'number' || typeof separation.armSideM !== 'number') return [];
    return [{ verticalM: separation.verticalM, armSideM: separation.armSideM }];
  });
  const [vertical, armSide] = [moments(known.map((one) => one.verticalM)), moments(known.map((one) => one.armSideM))];
  return vertical && armSide && { verticalM: vertical.mean, armSideM: armSide.mean };
}
