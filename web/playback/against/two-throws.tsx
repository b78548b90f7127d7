import { createMemo, For, Show } from 'solid-js';
import { drawGapPair } from '../../charts/gap-pair.ts';
import { drawLetteredPlane } from '../../charts/lettered-plane.ts';
import '../../charts/gap-line.css';
import '../../charts/gap-pair.css';
import '../../charts/trials.css';
import { Drawn } from '../../wall/drawn.tsx';
import { useSpeech } from '../../words/use-words.tsx';
import { tickWords } from '../strip-of.ts';
import { FORMS, gapsOfPair, planeOfPair, type Pair } from './pair-of.ts';
import { pairRows } from './pair-rows.ts';
import './against.css';

const TEXT_PX = 17;

/** Two throws laid over each other: on the separation plane, as gap lines, and measure by measure. */
export function TwoThrows(props: { readonly pair: Pair; readonly names: readonly [string, string] | null; readonly onLetGo: () => void }) {
  const speech = useSpeech();
  const say = () => speech().words.playback.against;
  const plane = createMemo(() => planeOfPair(props.pair, speech()));
  const gaps = createMemo(() => gapsOfPair(props.pair, speech()));
  const named = (index: 0 | 1) => [...(props.names === null ? [] : [props.names[index]]), tickWords(props.pair[index].thrown, speech())].join(': ');
  const athletes = () => [...new Set(props.pair.map(({ session }) => session.athlete.name))].join(' · ');
  const caveats = () => [
    ...plane().missing, ...gaps().missing,
    ...(props.pair[0].thrown.stage === props.pair[1].thrown.stage ? [] : [say().stages]),
    ...(props.pair[0].session.athlete.hand === props.pair[1].session.athlete.hand ? [] : [say().hands]),
    say().unsure,
  ];
  return (
    <section class="two-throws" aria-label={say().title(speech().words.trade.throwNumber(props.pair[0].thrown.number), speech().words.trade.throwNumber(props.pair[1].thrown.number))}>
      <header>
        <h1>{athletes()}</h1>
        <ol><For each={[0, 1] as const}>{(index) => <li class={FORMS[index].form}><b>{FORMS[index].letter}</b> {named(index)}</li>}</For></ol>
        <button type="button" onClick={() => props.onLetGo()}>{say().letGo}</button>
      </header>
      <div class="two-plane"><Show when={plane().data}>{(data) => <Drawn draw={(svg, size) => drawLetteredPlane(svg, data(), { ...size, textPx: TEXT_PX })} />}</Show></div>
      <div class="two-gaps"><Show when={gaps().data}>{(data) => <Drawn draw={(svg, size) => drawGapPair(svg, data(), { ...size, textPx: TEXT_PX })} />}</Show></div>
      <div class="two-measures" tabIndex={0} role="group" aria-label={say().difference}>
        <table>
          <thead><tr><th scope="col">{say().measure}</th><th scope="col">{FORMS[0].letter}</th><th scope="col">{FORMS[1].letter}</th><th scope="col">{say().difference}</th></tr></thead>
          <tbody><For each={pairRows(props.pair, speech())}>{(row) => <tr><th scope="row">{row.name}</th><td>{row.first}</td><td>{row.second}</td><td>{row.difference}</td></tr>}</For></tbody>
        </table>
        <For each={caveats()}>{(words) => <p class="quiet">{words}</p>}</For>
      </div>
    </section>
  );
}
