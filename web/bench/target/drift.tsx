import { For, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { driftWords } from './drift-words.ts';

/** A new baseline is offered where the fastballs have left the one that stands: the reasons first, then one tap. */
export function Drift(props: { readonly session: SessionView; readonly onRenew: () => void }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.target;
  return (
    <Show when={props.session.closedAtMs === null && props.session.baselineDrift}>
      {(drift) => (
        <div class="drift" role="group" aria-label={say().driftTitle}>
          <For each={driftWords(drift(), speech())}>{(sentence) => <p>{sentence}</p>}</For>
          <button type="button" class="main" onClick={() => props.onRenew()}>{say().renewNow}</button>
        </div>
      )}
    </Show>
  );
}
