import { createMemo, createSignal, For, onMount, Show } from 'solid-js';
import type { SessionView, ThrowView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { ArmStrip } from '../arm/arm-strip.tsx';
import { BodyLine } from '../arm/body-line.tsx';
import { ArmCare } from '../session/arm-care.tsx';
import { makeRoom } from './make-room.ts';
import { SelectionBar } from './selection-bar.tsx';
import { createSelection, type Selection } from './selection.ts';
import { ThrowLine } from './throw-line.tsx';
import { Unclaimed } from './unclaimed.tsx';

/** Lines drawn at first; a long day has hundreds. */
const LINES_AT_FIRST = 40;

/** The throws of the session, newest first, and what can be said about them afterwards. */
export function ThrowsPart(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.throws;
  const [shown, setShown] = createSignal(LINES_AT_FIRST);
  const selection = createSelection(() => desk.view().throws);
  const byPlace = createMemo(() => new Map(desk.view().throws.map((thrown) => [thrown.place, thrown])));
  const newestFirst = createMemo(() => desk.view().throws.map(({ place }) => place).reverse());
  /** Of the session, but no longer in the view. */
  const earlier = () => props.session.counts.all - newestFirst().length;
  const left = () => newestFirst().length - shown();
  let above!: HTMLDivElement;
  let room!: HTMLDivElement;
  let list!: HTMLOListElement;
  onMount(() => makeRoom({ above, room, list, followers: () => [...room.parentElement!.querySelectorAll<HTMLElement>('.throw-room ~ :not(.throws-foot)')] }));
  return (
    <section class="part throws" aria-labelledby="throws-title">
      <h2 id="throws-title" tabindex="-1">{say().title} <span class="quiet count">{props.session.counts.all}</span></h2>
      <div class="throws-above" ref={above}>
        <ArmStrip session={props.session} />
        <Show when={props.session.trial !== null}><BodyLine session={props.session} /></Show>
        <Show when={props.session.closedAtMs === null && props.session.baselineDrift !== null}><p class="drifted">{words().bench.target.drifted}</p></Show>
        <Unclaimed session={props.session} />
      </div>
      <div class="throw-room" ref={room}>
        <ol class="throw-lines" reversed ref={list}>
          <For each={newestFirst().slice(0, shown())} fallback={<li class="quiet">{say().none}</li>}>
            {(place) => <Line place={place} byPlace={byPlace()} session={props.session} selection={selection} />}
          </For>
        </ol>
      </div>
      <Show when={left() > 0}><button type="button" onClick={() => setShown(shown() + 200)}>{say().more(Math.min(left(), 200))}</button></Show>
      <Show when={left() <= 0 && earlier() > 0}><p class="quiet"><a href={`/playback/${encodeURIComponent(props.session.id)}`}>{say().inPlayback(earlier())}</a></p></Show>
      <ArmCare />
      <div class="throws-foot">
        <Answer corner="throws" />
        <Show when={selection.chosen().length > 0}><SelectionBar session={props.session} selection={selection} /></Show>
      </div>
    </section>
  );
}

/** A line lives as long as its throw, so that focus stays on it whatever is said about the throw meanwhile. */
function Line(props: { readonly place: number; readonly byPlace: ReadonlyMap<number, ThrowView>; readonly session: SessionView; readonly selection: Selection }) {
  const thrown = createMemo<ThrowView>((before) => props.byPlace.get(props.place) ?? before, props.byPlace.get(props.place)!);
  return <ThrowLine thrown={thrown()} session={props.session} chosen={props.selection.has(props.place)} onToggle={() => props.selection.toggle(props.place)} />;
}
