import type { FeedbackMode } from '../../core/facts/feedback-says.ts';
import type { FeedbackView } from '../../core/facts/feedback-view.ts';
import type { Words } from './words.ts';

/** "summary after 5". */
export function modeWords(mode: FeedbackMode, { feedback }: Words): string {
  return mode.kind === 'summary' ? feedback.mode.summary(mode.after) : feedback.mode[mode.kind];
}

/** Why a mode, where that comes from, and how sure it is. */
export function basisWords({ mode, basis }: Pick<FeedbackView, 'mode' | 'basis'>, { feedback }: Words): string {
  return feedback.basis(feedback.why[mode.kind], feedback.source[basis.source], feedback.sure[basis.sure]);
}

/** Which mode is on, and what that asks of the athlete. */
export function modeLine(view: Pick<FeedbackView, 'mode' | 'askFirst'>, words: Words): string {
  const { feedback } = words;
  return [
    feedback.line(modeWords(view.mode, words)),
    ...(view.mode.kind === 'outside-band' ? [feedback.silence] : []),
    ...(view.askFirst ? [feedback.asked] : []),
  ].join(' ');
}
