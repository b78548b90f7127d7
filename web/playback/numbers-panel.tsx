import { Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { ThrowNumbers } from '../throw-numbers/throw-numbers.tsx';
import { lastThrow } from '../wall/last-throw.ts';
import { whatWords } from '../words/throw-words.ts';
import { useSpeech } from '../words/use-words.tsx';

/** The numbers of the throw that the pictures show, beside them. */
export function NumbersPanel(props: { readonly view: MoundView }) {
  const speech = useSpeech();
  const say = () => speech().words.throwNumbers;
  const shown = () => {
    const { session } = props.view;
    const thrown = lastThrow(props.view);
    return session === null || thrown === null ? null : { session, thrown };
  };
  return (
    <aside class="player-panel player-numbers" aria-label={say().title}>
      <Show when={shown()} fallback={<p class="quiet">{say().before}</p>}>
        {(now) => (
          <>
            <h2>{say().of(speech().words.trade.throwNumber(now().thrown.number), whatWords(now().thrown, speech()))}</h2>
            <ThrowNumbers thrown={now().thrown} session={now().session} level="h3" />
          </>
        )}
      </Show>
    </aside>
  );
}
