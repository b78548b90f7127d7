import { familyOfTrial } from '../../core/coaching/tried-families.ts';
import type { SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';

/** The family whose aim is shown where nobody chooses one: that of the present trial; null where nobody said. */
export function familyAimedAt({ trial }: SessionView): Family | null {
  return trial === null ? null : familyOfTrial(trial);
}
