import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { trialWords } from '../../grip/grip-words.ts';

/** The next throw as a sentence: intent, trial, grip and cue. Only a trial of that intent is entered by it. */
export function NextThrow(props: { readonly session: SessionView }) {
  const words = useWords();
  const say = () => words().bench.frame;
  const intent = () => props.session.intent;
  const trial = () => (props.session.trial?.intent === intent() ? props.session.trial : null);
  return (
    <p class="next-throw">
      <span class="quiet">{say().next}</span>{' '}
      <strong>{intent() === null ? say().sayIntent : words().trade.intent[intent()!]}</strong>
      <Show when={trial()} fallback={<>, <span class="quiet">{say().noTrialHere}</span></>}>
        {(current) => (
          <>
            , <strong class="letter">{say().trialOf(current().letter)}</strong> <span class="next-grip">{trialWords(current(), words())}</span>
          </>
        )}
      </Show>
    </p>
  );
}
