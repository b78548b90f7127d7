import { Match, Show, Switch } from 'solid-js';
import type { BaselineView, SessionView } from '../../../core/facts/views.ts';
import { dateText, hourText } from '../../words/moments.ts';
import { speedText } from '../../words/numbers.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { AskTwice } from '../fields/ask-twice.tsx';
import { Drift } from './drift.tsx';

/** The fastball that everything is held against, how it came to be, and the way to form it anew. */
export function Baseline(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.target;
  const zone = () => props.session.timeZone;
  const formed = () => (props.session.baseline.kind === 'baseline' ? props.session.baseline : null);
  const forming = () => (props.session.baseline.kind === 'forming' ? props.session.baseline : null);
  const speed = ({ speedMps, speedSpreadMps }: BaselineView) => say().plusMinus(speedText(speedMps, speech()), speedText(speedSpreadMps, speech()));
  const renew = () => void desk.say('baseline', { kind: 'baseline-renewed', session: props.session.id, stage: props.session.stage });
  const origin = (baseline: BaselineView) =>
    baseline.origin === 'earlier'
      ? say().earlier(dateText(baseline.atMs, zone(), speech().language))
      : say().formedAt(hourText(baseline.atMs, zone(), speech().language));
  return (
    <section class="baseline" aria-labelledby="baseline-title">
      <h3 id="baseline-title">{formed() === null ? say().baseline : speech().words.trade.fastballBaseline(formed()!.number)}</h3>
      <Switch>
        <Match when={forming()}>{(state) => <p>{say().forming(state().have, state().need)}</p>}</Match>
        <Match when={formed()}>
          {(baseline) => <p>{speed(baseline())}, {say().ofThisStage(speech().words.trade.stage[baseline().stage], baseline().count)}, {origin(baseline())}</p>}
        </Match>
      </Switch>
      <Show when={props.session.closedAtMs === null}>
        <Drift session={props.session} onRenew={renew} />
        <AskTwice label={say().renew} question={say().renewAsk} yes={say().renewYes}
          onYes={renew} />
      </Show>
      <Answer corner="baseline" />
    </section>
  );
}
