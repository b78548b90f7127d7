import type { SpeedBand, TargetZone } from '../../core/facts/coach.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import type { Speech } from '../words/speech.ts';

/** A target that is being planned: as proposed, or moved by hand since. */
export interface PlannedTarget {
  readonly zone: TargetZone;
  readonly band: SpeedBand | null;
  readonly origin: 'proposed' | 'moved';
}

/** The longest reason that a fact takes. */
export const LONGEST_REASON = 200;

/** The reason that is said with a target when the coach gives none of their own. */
export function reasonFor({ origin }: Pick<PlannedTarget, 'origin'>, family: Family, { words: { plan } }: Speech): string {
  const name = plan.families.family[family];
  return origin === 'proposed' ? plan.target.reasonProposed(name) : plan.target.reasonMoved(name);
}
