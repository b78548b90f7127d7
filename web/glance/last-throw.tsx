import { createMemo, For, lazy, Show } from 'solid-js';
import type { MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import { showsSpeed, speedAskedFor } from '../shown-speed.ts';
import { useSpeech } from '../words/use-words.tsx';
import { guessWords } from './tap-field.ts';
import { glanceWords } from './said.ts';

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

/**
 * The picture's program is fetched right behind Glance, so that the words of a throw never wait for it. Where the network went just then,
 * it is asked for again once there is something to draw.
 */
const fetchPicture = () => import('./picture.tsx');
void fetchPicture().catch(() => {});
const Plane = lazy(fetchPicture);

/** The throws of a view on the separation plane, in a room that is there before the picture. */
export function Picture(props: { readonly view: MoundView }) {
  return <div class="glance-picture"><Plane view={props.view} /></div>;
}
