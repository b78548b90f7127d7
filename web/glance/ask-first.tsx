import { createSignal, createUniqueId, For, Show } from 'solid-js';
import type { ThrowGuess } from '../../core/facts/feedback-says.ts';
import type { SessionView, ThrowView } from '../../core/facts/views.ts';
import { whatWords } from '../words/throw-words.ts';
import { useSpeech, useWords } from '../words/use-words.tsx';
import { movedCells, movedWords, wentCells, wentWords, type Went } from './tap-field.ts';
import { useVoice } from './voice.ts';

/** The athlete says where a throw went and how it moved before any number comes. Both are one statement; either may stay open. */
export function AskFirst(props: { readonly thrown: ThrowView; readonly session: SessionView }) {
  const voice = useVoice();
  const speech = useSpeech();
  const say = () => speech().words.glance;
  const hand = () => props.session.athlete.hand;
  const [went, setWent] = createSignal<{ readonly said: Went | null } | null>(null);
  const tell = (guess: ThrowGuess) => void voice.say({ kind: 'throw-guessed', session: props.session.id, place: props.thrown.place, ...guess });
  const tellWent = (said: Went | null) => {
    // Without a zone there is nothing that its movement could be held against.
    if (props.session.zone === null) tell({ went: said, moved: null });
    else setWent({ said });
  };
  return (
    <article class="glance-throw glance-ask" data-place={props.thrown.place}>
      <p class="glance-what">{whatWords(props.thrown, speech())}</p>
      <Show when={went()} fallback={<TapField title={say().wentAsk} how={say().wentHow} cells={wentCells(hand())} words={(cell) => wentWords(cell, speech().words)} onTap={tellWent} />}>
        {(first) => (
          <TapField title={say().movedAsk} how={say().movedHow} cells={movedCells(hand())} words={(cell) => movedWords(cell, speech().words)} onTap={(moved) => tell({ went: first().said, moved })} />
        )}
      </Show>
      <Show when={voice.failed()}><p class="glance-failed" role="alert">{say().notSaid}</p></Show>
    </article>
  );
}

/** Nine places to tap, and a way to say that one cannot say. */
function TapField<Cell>(props: { readonly title: string; readonly how: string; readonly cells: readonly Cell[]; readonly words: (cell: Cell) => string; readonly onTap: (cell: Cell | null) => void }) {
  const words = useWords();
  const title = createUniqueId();
  return (
    <div class="glance-field" role="group" aria-labelledby={title}>
      <h2 id={title} class="glance-lead">{props.title}</h2>
      <p class="glance-sentence">{props.how}</p>
      <div class="glance-nine"><For each={props.cells}>{(cell) => <button type="button" onClick={() => props.onTap(cell)}>{props.words(cell)}</button>}</For></div>
      <button type="button" class="glance-cannot" onClick={() => props.onTap(null)}>{words().glance.cannotSay}</button>
    </div>
  );
}
