import { Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';

/** Why there is nothing to show and, where asking could help, the way to ask again. */
export function Unanswered(props: { readonly sentence: string; readonly again: (() => void) | null }) {
  const words = useWords();
  return (
    <section class="teaching" role="alert">
      <p><strong>{props.sentence}</strong></p>
      <Show when={props.again}>{(again) => <button type="button" onClick={() => again()()}>{words().playback.again}</button>}</Show>
    </section>
  );
}
