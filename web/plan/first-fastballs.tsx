import { For, Show } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { Answer } from '../desk/answer.tsx';
import { useDesk } from '../desk/desk.ts';
import { useWords } from '../words/use-words.tsx';

/** Before there is a fastball to plan from: the next step, and how far it is. */
export function FirstFastballs(props: { readonly session: SessionView; readonly have: number; readonly need: number }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().plan.frame.empty;
  const fastball = () => words().trade.intent[props.session.athlete.mainFastball];
  const sayFastball = () => void desk.say('intent', { kind: 'intent-set', session: props.session.id, intent: props.session.athlete.mainFastball });
  return (
    <section class="first-fastballs" aria-labelledby="first-title">
      <h2 id="first-title">{say().title(props.need - props.have)}</h2>
      <p class="fastball-marks" role="img" aria-label={say().have(props.have, props.need)}>
        <For each={Array.from({ length: props.need }, (_, index) => index < props.have)}>{(thrown) => <span classList={{ thrown }} />}</For>
      </p>
      <p>{say().have(props.have, props.need)}. <span class="quiet">{say().why}</span></p>
      <Show when={props.session.closedAtMs === null}>
        <Show when={props.session.intent === props.session.athlete.mainFastball} fallback={<button type="button" class="main" onClick={sayFastball}>{say().sayIntent(fastball())}</button>}>
          <p class="done">{say().intentIs(fastball())}</p>
        </Show>
        <Answer corner="intent" />
      </Show>
    </section>
  );
}
