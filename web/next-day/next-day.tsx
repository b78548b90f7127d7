import { For, Match, Show, Switch } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { trialWords } from '../grip/grip-words.ts';
import { useSpeech } from '../words/use-words.tsx';
import { Answer } from '../desk/answer.tsx';
import { useDesk } from '../desk/desk.ts';
import { offerWords, startingSet, thrownWords } from './next-day-words.ts';
import './next-day.css';

/** The set without feedback that is due, one tap away; while and after it is thrown, what it shows. Nothing where none is due. */
export function NextDay(props: { readonly session: SessionView; readonly mayThrow: boolean }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.way.set;
  const offered = () => {
    const { nextDaySet } = props.session;
    return props.mayThrow && nextDaySet?.kind === 'offered' ? nextDaySet : null;
  };
  const thrown = () => {
    const { nextDaySet } = props.session;
    return nextDaySet?.kind === 'thrown' ? nextDaySet : null;
  };
  return (
    <Show when={offered() !== null || thrown() !== null}>
      <section class="next-day" aria-labelledby="next-day-title">
        <h3 id="next-day-title">{say().title}</h3>
        <Switch>
          <Match when={offered()}>
            {(offer) => (
              <>
                <p>{offerWords(offer(), speech())}</p>
                <p class="quiet">{speech().words.trade.intent[offer().trial.intent]}, {trialWords(offer().trial, speech().words)}</p>
                <button type="button" class="main" onClick={() => void desk.sayAll('next-day', startingSet(props.session.id, offer()))}>{say().start(offer().throws)}</button>
              </>
            )}
          </Match>
          <Match when={thrown()}>
            {(shown) => (
              <>
                <For each={thrownWords(shown(), speech())}>{(sentence) => <p>{sentence}</p>}</For>
                <Show when={props.session.closedAtMs === null && props.session.feedback.mode.kind === 'none'}><p class="quiet">{say().off}</p></Show>
              </>
            )}
          </Match>
        </Switch>
        <Answer corner="next-day" />
      </section>
    </Show>
  );
}
