import { useWords } from '../words/use-words.tsx';

/** Why there is nothing to show, and the way to ask again. */
export function Unanswered(props: { readonly sentence: string; readonly again: () => void }) {
  const words = useWords();
  return (
    <section class="teaching" role="alert">
      <p><strong>{props.sentence}</strong></p>
      <button type="button" onClick={() => props.again()}>{words().playback.again}</button>
    </section>
  );
}
