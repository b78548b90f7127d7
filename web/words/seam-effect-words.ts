import type { SeamEffectView } from '../../core/facts/views.ts';
import { movementIn, movementText, MOVEMENT_UNIT, numberText } from './numbers.ts';
import type { Speech } from './speech.ts';

/** The verdict on a trial's seam effect with its number: "seam effect seen, 3.7 ± 0.6 in". */
export function seamEffectWords(effect: SeamEffectView, speech: Speech): string {
  const say = speech.words.asked.seamEffect;
  switch (effect.kind) {
    case 'too-few': return say.tooFew(effect.count, effect.need);
    case 'not-visible': return say.hidden(speech.words.measures.missing['not-visible']);
    case 'seen':
    case 'not-seen':
    case 'cannot-tell': return say.weighed(say.verdict[effect.kind], eitherSide(effect, speech));
  }
}

/** The same, and what it was held against, or why this device cannot tell. */
export function seamEffectReason(effect: SeamEffectView, speech: Speech): string {
  const { seamEffect: say, seamMap } = speech.words.asked;
  const verdict = seamEffectWords(effect, speech);
  switch (effect.kind) {
    case 'too-few': return verdict;
    case 'not-visible': return `${verdict}. ${seamMap.hiddenBecause[effect.reason]}`;
    case 'seen':
    case 'not-seen':
    case 'cannot-tell': return say.against(verdict, movementText(effect.boundM, speech, 1));
  }
}

/** Its middle to the side it lies on, and half the width of the interval that holds at every look. */
function eitherSide({ meanM, lowM, highM }: { readonly meanM: number; readonly lowM: number; readonly highM: number }, { units, language }: Speech): string {
  const [middle, either] = [Math.abs(meanM), (highM - lowM) / 2].map((metres) => numberText(movementIn(units, metres), 1, language));
  return `${middle} ± ${either} ${MOVEMENT_UNIT[units]}`;
}
