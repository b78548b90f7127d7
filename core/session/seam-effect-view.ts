import { SEAM_FEWEST_THROWS, seamEffect } from '../coaching/seam-effect.ts';
import type { SeamEffectView, UnexplainedReading } from '../facts/views.ts';
import type { SeamSums } from './seam-sums.ts';

/**
 * Whether the seams push the throws of one trial in the present stage; excluded throws have no say.
 * @param newest of the session's last throw: before its first one a trial is seen by whatever saw that
 */
export function seamEffectView({ thrown, acrossM, boundsM, hidden }: SeamSums, newest: UnexplainedReading | null): SeamEffectView {
  const reason = thrown > 0 ? hidden : newest?.kind === 'not-visible' ? newest.reason : null;
  if (acrossM.count === 0 && reason !== null) return { kind: 'not-visible', reason };
  const effect = seamEffect(acrossM, acrossM.count === 0 ? 0 : boundsM / acrossM.count);
  if (effect.kind === 'too-few') return { kind: 'too-few', count: effect.count, need: Math.max(SEAM_FEWEST_THROWS, effect.count + 1) };
  const { intervalM: [lowM, highM], ...said } = effect;
  return { ...said, lowM, highM };
}
