import type { Cue, Grip } from '../facts/coach.ts';
import type { Family, Intent } from '../facts/vocabulary.ts';

export interface TrialEntry {
  readonly letter: string;
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly cue: Cue | null;
  /** As said at its beginning; absent where nobody said. */
  readonly family?: Family;
}
