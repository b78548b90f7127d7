import { createSignal, Show } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';

/** A button whose effect is asked about in place before it is said. */
export function AskTwice(props: { readonly label: string; readonly question: string; readonly yes: string; readonly onYes: () => void }) {
  const words = useWords();
  const [asking, setAsking] = createSignal(false);
  let asked = false;
  const answer = (yes: boolean) => {
    asked = true;
    setAsking(false);
    if (yes) props.onYes();
  };
  return (
    <Show when={asking()} fallback={<button type="button" ref={(button) => { if (asked) focusSoon(button); }} onClick={() => setAsking(true)}>{props.label}</button>}>
      <div class="ask" role="group" aria-label={props.label}>
        <p>{props.question}</p>
        <div class="row">
          <button type="button" class="main" ref={focusSoon} onClick={() => answer(true)}>{props.yes}</button>
          <button type="button" onClick={() => answer(false)}>{words().bench.frame.keep}</button>
        </div>
      </div>
    </Show>
  );
}

/** Once the button stands in the page. */
function focusSoon(button: HTMLButtonElement): void {
  queueMicrotask(() => button.focus());
}
