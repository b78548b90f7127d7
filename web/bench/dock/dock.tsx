import { For, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useArm } from '../arm/arm-state.ts';
import type { Place } from '../places.ts';
import { Intents } from './intents.tsx';
import { NextBlockOffer } from './next-block.tsx';
import { NextThrow } from './next-throw.tsx';
import { PassMound } from './pass-mound.tsx';

/** Under the thumb at all times: what the next throw is meant to be, who throws it, and the places of Bench. */
export function Dock(props: { readonly session: SessionView; readonly places: readonly Place[]; readonly place: Place; readonly onPlace: (place: Place) => void; readonly onOpen: () => void }) {
  const words = useWords();
  const say = () => words().bench.frame;
  const arm = useArm();
  const open = () => props.session.closedAtMs === null;
  const pain = () => arm()?.pain !== null;
  return (
    <footer class="dock">
      <div class="dock-line">
        <Show when={open()} fallback={<p class="next-throw">{say().closedNow}</p>}>
          <Show when={!pain()} fallback={<p class="next-throw">{words().bench.arm.noThrow}</p>}><NextThrow session={props.session} /><NextBlockOffer session={props.session} /></Show>
        </Show>
        <PassMound />
        <Show when={!open()}><button type="button" class="main" onClick={() => props.onOpen()}>{words().bench.session.another}</button></Show>
      </div>
      <Answer corner="intent" />
      <Answer corner="mound" />
      <Show when={open() && !pain()}><Intents session={props.session} /></Show>
      <Show when={props.places.length > 1}>
        <nav class="places" aria-label={say().places}>
          <For each={props.places}>
            {(place) => <button type="button" class="place" aria-current={props.place === place ? 'true' : undefined} onClick={() => props.onPlace(place)}>{say().place[place]}</button>}
          </For>
        </nav>
      </Show>
    </footer>
  );
}
