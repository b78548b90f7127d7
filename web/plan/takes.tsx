import { For, Show } from 'solid-js';
import type { Assumed } from '../../core/coaching/own-arm.ts';
import type { Hand } from '../../core/facts/vocabulary.ts';
import { assumedWords } from '../reach/assumed-words.ts';
import { useSpeech } from '../words/use-words.tsx';
import { leftOverWords, nearestWords, stepRows } from './takes-words.ts';
import type { ZoneTakes } from './within-arm.ts';

/** What the zone asks of this arm. It follows the finger, so it is not announced while it changes. */
export function Takes(props: { readonly takes: ZoneTakes | null; readonly hand: Hand; readonly fastballMps: number; readonly visible: boolean; readonly assumed: readonly Assumed[] }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.target;
  return (
    <section class="plan-takes" aria-labelledby="takes-title">
      <h2 id="takes-title">{say().takes}</h2>
      <Show when={props.takes} fallback={<p>{say().noFlight}</p>}>
        {(takes) => (
          <>
            <Nearest takes={takes()} hand={props.hand} fastballMps={props.fastballMps} />
            <p class="left-over">{leftOverWords(takes(), props.visible, speech()).join(' ')}</p>
            <Steps takes={takes()} hand={props.hand} />
            <p class="quiet small">{say().byModel} {assumedWords(props.assumed, speech())}</p>
          </>
        )}
      </Show>
    </section>
  );
}

function Nearest(props: { readonly takes: ZoneTakes; readonly hand: Hand; readonly fastballMps: number }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.target;
  const said = () => nearestWords(props.takes, props.hand, props.fastballMps, speech());
  return (
    <dl class="measures nearest">
      <div><dt>{say().tilt}</dt><dd>{said().tilt}</dd></div>
      <div><dt>{say().efficiency}</dt><dd>{said().efficiency}</dd></div>
      <div><dt>{say().spin}</dt><dd>{said().spin}</dd></div>
      <div><dt>{say().speed}</dt><dd>{said().pace}</dd></div>
    </dl>
  );
}

function Steps(props: { readonly takes: ZoneTakes; readonly hand: Hand }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.target;
  return (
    <table class="steps">
      <caption>{say().steps}</caption>
      <thead class="unseen"><tr><th scope="col">{say().step}</th><th scope="col">{say().stepDown}</th><th scope="col">{say().stepSide}</th></tr></thead>
      <tbody>
        <For each={stepRows(props.takes, props.hand, speech())}>
          {({ step, vertical, side }) => <tr><th scope="row">{step}</th><td>{vertical}</td><td>{side}</td></tr>}
        </For>
      </tbody>
    </table>
  );
}
