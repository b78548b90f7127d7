import { createMemo, Index, Show } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { Answer } from '../desk/answer.tsx';
import { useDesk } from '../desk/desk.ts';
import { useSpeech } from '../words/use-words.tsx';
import { tickList, type Tick } from './tick-list.ts';
import './observed.css';

/** What the coach sees on the present trial, one tap each, and what each moves in the ranking of the families. */
export function Observed(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const words = () => speech().words.observed;
  const ticks = createMemo(() => tickList(props.session, speech()));
  /** A tick that was refused goes back to what stands. */
  const say = async ({ what, seen }: Tick, box: HTMLInputElement) => {
    const stored = await desk.say('observed', { kind: 'observation-ticked', session: props.session.id, what, seen: box.checked, place: null });
    if (stored === null) box.checked = seen;
  };
  return (
    <Show when={props.session.closedAtMs === null && props.session.trial}>
      {(trial) => (
        <div class="observed" role="group" aria-labelledby="observed-title">
          <h3 id="observed-title">{words().title(trial().letter)}</h3>
          <Index each={ticks()}>
            {(tick) => (
              <label>
                <input type="checkbox" checked={tick().seen} onChange={(event) => void say(tick(), event.currentTarget)} />
                <span>{tick().words} <small class="quiet">{tick().moves}</small></span>
              </label>
            )}
          </Index>
          <p class="quiet small">{words().why}</p>
          <Answer corner="observed" />
        </div>
      )}
    </Show>
  );
}
