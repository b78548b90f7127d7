import { createMemo, For, Show } from 'solid-js';
import type { MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import { showsSpeed, speedAskedFor } from '../shown-speed.ts';
import { useSpeech } from '../words/use-words.tsx';
import { Mark, Picture } from './last-throw.tsx';
import { glanceWords } from './said.ts';

/** The last throws at once: how many were on target, each in words, all on one separation plane. */
export function Summary(props: { readonly throws: readonly ThrowView[]; readonly onTarget: number; readonly judged: number; readonly view: MoundView; readonly session: SessionView }) {
  const speech = useSpeech();
  const say = () => speech().words.glance;
  const lines = createMemo(() => props.throws.map((thrown) => ({ place: thrown.place, ...glanceWords(thrown, props.session, showsSpeed(props.session, speedAskedFor(location.search)), speech()) })));
  return (
    <article class="glance-throw glance-summary" data-places={props.throws.map(({ place }) => place).join(' ')}>
      <div class="glance-words">
        <p class="glance-what">{say().summaryOf(props.throws.length)}</p>
        <Show when={props.judged > 0} fallback={<p class="glance-sentence">{say().summaryUnjudged}</p>}><p class="glance-lead">{say().summary(props.onTarget, props.judged)}</p></Show>
        <ol class="glance-lines"><For each={lines()}>{(line) => <li><Mark onTarget={line.onTarget} />{line.lead}</li>}</For></ol>
      </div>
      <Show when={props.session.baseline.kind === 'baseline'}><Picture view={{ ...props.view, throws: props.throws }} /></Show>
    </article>
  );
}
