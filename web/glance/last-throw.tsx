import { createMemo, For, Show } from 'solid-js';
import type { MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import { drawPlane } from '../charts/plain-plane.ts';
import { showsSpeed, speedAskedFor } from '../shown-speed.ts';
import { Drawn } from '../wall/drawn.tsx';
import { planeOf } from '../wall/plane-of.ts';
import { useSpeech } from '../words/use-words.tsx';
import { guessWords } from './tap-field.ts';
import { glanceWords } from './said.ts';

/** Of the picture's text: by its width, from a phone to a television. */
const textPxIn = (width: number): number => Math.round(Math.max(15, Math.min(26, width / 26)));

/** One throw: a mark and words for the target, one sentence, one picture. */
export function LastThrow(props: { readonly thrown: ThrowView; readonly view: MoundView; readonly session: SessionView }) {
  const speech = useSpeech();
  const said = createMemo(() => glanceWords(props.thrown, props.session, showsSpeed(props.session, speedAskedFor(location.search)), speech()));
  const own = () => {
    const { now, guess } = props.session.feedback;
    return now.kind === 'full' && now.place === props.thrown.place ? guessWords(guess, speech().words) : null;
  };
  return (
    <article class="glance-throw" data-place={props.thrown.place} data-on-target={said().onTarget === null ? 'not-judged' : said().onTarget ? 'yes' : 'no'}>
      <div class="glance-words">
        <p class="glance-what">{said().what}</p>
        <p class="glance-lead"><Mark onTarget={said().onTarget} />{said().lead}</p>
        <Show when={said().sentence}>{(sentence) => <p class="glance-sentence">{sentence()}</p>}</Show>
        <Show when={own()}>{(said) => <p class="glance-own">{said()}</p>}</Show>
      </div>
      <Show when={props.session.baseline.kind === 'baseline'}><Picture view={{ ...props.view, throws: [props.thrown] }} /></Show>
      <Show when={said().unknown.length > 0}><ul class="glance-unknown"><For each={said().unknown}>{(sentence) => <li>{sentence}</li>}</For></ul></Show>
    </article>
  );
}

/** Filled on target, hollow for a miss, as on every picture. The words beside it say the same. */
export function Mark(props: { readonly onTarget: boolean | null }) {
  return (
    <Show when={props.onTarget !== null}>
      <svg class="glance-mark" classList={{ filled: props.onTarget === true }} viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="7.5" /></svg>
    </Show>
  );
}

/** The throws of a view on the separation plane; what the last one missed by stands in words above. */
export function Picture(props: { readonly view: MoundView }) {
  const speech = useSpeech();
  const plane = createMemo(() => {
    const data = planeOf(props.view, speech());
    return { ...data, miss: data.miss === null ? null : { ...data.miss, words: [] } };
  });
  return <Drawn class="glance-picture" draw={(svg, { width, height }) => drawPlane(svg, plane(), { width, height, textPx: textPxIn(width), letters: 'newest' }, null)} />;
}
