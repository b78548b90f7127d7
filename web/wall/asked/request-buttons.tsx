import { For } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import { askedWords } from './asked-words.ts';
import { ASKED } from './asked.ts';
import type { Requests } from './requests.ts';

/** There for a keyboard or a reader; each unseen until it has the focus. */
export function RequestButtons(props: { readonly requests: Requests }) {
  const words = useWords();
  const say = (shown: boolean, { show, hide }: { readonly show: string; readonly hide: string }): string => (shown ? hide : show);
  return (
    <>
      <button type="button" class="wall-request" aria-pressed={props.requests.windows.asked()} onClick={() => props.requests.windows.toggle()}>{say(props.requests.windows.asked(), words().wall.windows)}</button>
      <For each={ASKED}>
        {(asked) => (
          <button type="button" class="wall-request" aria-pressed={props.requests.picture() === asked} onClick={() => props.requests.ask(asked)}>
            {say(props.requests.picture() === asked, askedWords(asked, words()))}
          </button>
        )}
      </For>
    </>
  );
}
