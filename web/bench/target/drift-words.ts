import { RELEASE_MOVES_BY_M, SINKS_BY_MPS } from '../../../core/coaching/baseline-drift.ts';
import type { BaselineDrift } from '../../../core/facts/advice-view.ts';
import { movementText, speedText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';

/** How the fastballs have left their baseline, why that matters, and by which rule; each a sentence. */
export function driftWords({ speedMps, releaseHeightM, releaseArmSideM }: BaselineDrift, speech: Speech): string[] {
  const { target } = speech.words.bench;
  const amount = (metres: number): string => movementText(Math.abs(metres), speech, 1);
  const ways = [
    ...(releaseHeightM === null ? [] : [(releaseHeightM < 0 ? target.lower : target.higher)(amount(releaseHeightM))]),
    ...(releaseArmSideM === null ? [] : [(releaseArmSideM < 0 ? target.toGloveSide : target.toArmSide)(amount(releaseArmSideM))]),
  ];
  return [
    ...(speedMps === null ? [] : [target.sunk(speedText(-speedMps, speech))]),
    ...(ways.length === 0 ? [] : [target.releasedElsewhere(ways.join(', '))]),
    target.driftMatters,
    target.driftRule(speedText(SINKS_BY_MPS, speech), movementText(RELEASE_MOVES_BY_M, speech, 1)),
  ];
}
