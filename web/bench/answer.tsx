import { Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { useDesk, type Corner } from './desk.ts';
import { NO_ANSWER } from '../live/say.ts';

/** What the server said to the last statement of this corner: still waiting, or refused and why. */
export function Answer(props: { readonly corner: Corner }) {
  const desk = useDesk();
  const words = useWords();
  const sentence = (code: string, said: string) => (code === NO_ANSWER ? words().bench.frame.unreachable : words().bench.frame.refusal(code, said));
  return (
    <div class="answer" aria-live="polite">
      <Show when={desk.waiting(props.corner)}><span class="waiting">{words().bench.frame.waiting}</span></Show>
      <Show when={desk.refusal(props.corner)}>
        {(refusal) => (
          <p class="refusal">
            <strong>{words().bench.frame.refused}</strong> {sentence(refusal().code, refusal().sentence)}
            <button type="button" class="plain" onClick={() => desk.dismiss(props.corner)}>{words().bench.frame.dismiss}</button>
          </p>
        )}
      </Show>
    </div>
  );
}
