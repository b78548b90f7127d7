import type { Estimate, ShareView, SpreadView } from '../../core/facts/views.ts';
import { MISS_OF_ONE_M } from '../../core/coaching/target.ts';
import { movementIn, MOVEMENT_UNIT, movementText, numberText, shareText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

/** "3 of 9 (12 to 65 %)". */
export function onTargetWords(share: ShareView, speech: Speech): string {
  const { measures, trials: { frame } } = speech.words;
  switch (share.kind) {
    case 'no-zone': return frame.noZone;
    case 'too-few': return frame.tooFew(share.count, share.need);
    case 'share': return frame.within(measures.hits(share.hits, share.count), bare(shareText(share.low, speech)), shareText(share.high, speech));
  }
}

/** "21 in² (12 to 48 in²)". */
export function spreadWords(spread: SpreadView, speech: Speech): string {
  const { frame } = speech.words.trials;
  if (spread.kind === 'too-few') return frame.tooFew(spread.count, spread.need);
  const area = (areaM2: number): string => numberText(areaM2 * movementIn(speech.units, 1) ** 2, 0, speech.language);
  return frame.within(frame.area(area(spread.areaM2), MOVEMENT_UNIT[speech.units]), area(spread.areaLowM2), area(spread.areaHighM2));
}

/** "1.2 in (−0.3 to 2.7)": negative inside the target. */
export function missMeanWords(miss: Estimate, speech: Speech): string {
  const { frame } = speech.words.trials;
  if (miss.kind === 'too-few') return miss.count === 0 ? frame.noZone : frame.tooFew(miss.count, miss.need);
  return frame.within(movementText(miss.mean * MISS_OF_ONE_M, speech, 1), missNumber(miss.low, speech), missNumber(miss.high, speech));
}

/** A miss as a bare number in the viewer's unit. */
function missNumber(miss: number, { units, language }: Speech): string {
  return numberText(movementIn(units, miss * MISS_OF_ONE_M), 1, language);
}

const bare = (percent: string): string => percent.replace(/\s*%/, '');
