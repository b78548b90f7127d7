import type { Assumed } from '../../core/coaching/own-arm.ts';
import type { Speech } from '../words/speech.ts';

/** What of the arm is not the athlete's own; null where all is. */
export function assumedWords(assumed: readonly Assumed[], { words: { plan } }: Speech): string | null {
  return assumed.length === 0 ? null : plan.target.assumed(assumed.map((one) => plan.target.assumes[one]).join(', '));
}
