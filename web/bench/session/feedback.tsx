import { Show } from 'solid-js';
import type { FeedbackMode } from '../../../core/facts/feedback-says.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { basisWords, modeWords } from '../../words/feedback-words.ts';
import { useWords } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { createOnItsWay } from '../../desk/on-its-way.ts';

const MODES: Readonly<Record<string, FeedbackMode>> = {
  'every-throw': { kind: 'every-throw' },
  'outside-band': { kind: 'outside-band' },
  'summary-3': { kind: 'summary', after: 3 },
  'summary-5': { kind: 'summary', after: 5 },
  fading: { kind: 'fading' },
  none: { kind: 'none' },
};

/** When the athlete's Glance shows a throw, and whether the athlete says first. Why, and how sure that is, stands beneath. */
export function FeedbackChoice(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.session;
  const underway = createOnItsWay<Pick<SessionView['feedback'], 'mode' | 'askFirst'>>(() => desk.view().place);
  const now = () => underway.value() ?? props.session.feedback;
  const set = (mode: FeedbackMode, askFirst: boolean) => void underway.send({ mode, askFirst }, desk.say('feedback', { kind: 'feedback-set', session: props.session.id, mode, askFirst }));
  const chosen = () => (now().mode.kind === 'summary' ? `summary-${(now().mode as Extract<FeedbackMode, { kind: 'summary' }>).after}` : now().mode.kind);
  return (
    <div class="feedback-choice">
      <Choice legend={say().feedback} options={Object.keys(MODES)} say={(key) => modeWords(MODES[key]!, words())} chosen={chosen()} onChoose={(key) => set(MODES[key]!, now().askFirst)} />
      <Choice legend={say().askFirst} options={['no', 'yes'] as const} say={(key) => say().askFirsts[key]} chosen={now().askFirst ? 'yes' : 'no'} onChoose={(key) => set(now().mode, key === 'yes')} />
      <p class="quiet">{now().mode.kind === 'outside-band' ? `${words().feedback.silence} ` : ''}{basisWords(props.session.feedback, words())}</p>
      <Show when={now().askFirst || now().mode.kind !== 'every-throw'}><p class="quiet wall-shows">{say().wallShows}</p></Show>
      <Answer corner="feedback" />
    </div>
  );
}
