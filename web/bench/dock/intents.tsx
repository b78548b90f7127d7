import { For } from 'solid-js';
import { INTENTS } from '../../../core/facts/vocabulary.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import type { OneTap } from './one-tap.ts';

/** What the next throw is meant to be: one tap, and it stays until another is tapped. */
export function Intents(props: { readonly session: SessionView; readonly oneTap: OneTap }) {
  const words = useWords();
  return (
    <div class="intents" role="group" aria-label={words().bench.frame.intents}>
      <For each={INTENTS}>
        {(intent) => <button type="button" aria-pressed={props.session.intent === intent} onClick={() => props.oneTap.intent(intent)}>{words().trade.intent[intent]}</button>}
      </For>
    </div>
  );
}
