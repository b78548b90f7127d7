import { createMemo, For, Show } from 'solid-js';
import { drawDifference } from '../charts/difference-line.ts';
import { Drawn } from '../wall/drawn.tsx';
import { momentText } from '../words/moments.ts';
import { shareText } from '../words/numbers.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { OpenedComparison } from './comparison-of.ts';
import { differenceData } from './difference-data.ts';
import { measureWords } from './measure-words.ts';
import type { Names } from './names.ts';
import { becauseWords, cautionWords, dayWords, excludedWords, verdictWords } from './verdict-words.ts';

const TEXT_PX = 15;

/** What the evidence allows to say, in words and as an interval, and all that makes it less sure. */
export function Verdict(props: { readonly found: OpenedComparison; readonly names: Names; readonly stage: string; readonly timeZone: string; readonly advise: boolean }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.verdict;
  const compared = () => props.found.compared;
  const when = () => {
    const { openedAtMs } = props.found.entry;
    return momentText(openedAtMs, props.timeZone, speech().language);
  };
  const difference = createMemo(() => differenceData(compared(), props.names, speech()));
  const excluded = createMemo(() => excludedWords(compared(), props.found.taken, props.names, speech()));
  return (
    <div class="verdict" data-verdict={compared().verdict.kind}>
      <p class="over quiet">{say().number(props.found.entry.k, props.stage, when())}</p>
      <h2 id="pair-title" aria-live="polite">{verdictWords(compared().verdict, props.names, speech())}</h2>
      <Show when={difference()}>
        {(data) => (
          <figure class="difference">
            <Drawn class="difference-room" draw={(svg, { width, height }) => drawDifference(svg, data(), { width, height, textPx: TEXT_PX })} />
            <figcaption class="quiet small"><span class="key small-band">{data().texts.small}</span><span class="key careful">{say().careful}</span></figcaption>
          </figure>
        )}
      </Show>
      <ul class="because"><For each={becauseWords(compared(), props.found.taken, props.names, props.advise, speech())}>{(sentence) => <li>{sentence}</li>}</For></ul>
      <Sentences class="cautions" title={say().cautions} sentences={cautionWords(compared(), props.found.taken, props.names, props.advise, speech())} />
      <Sentences class="excluded" title={say().excludedTitle} sentences={[...excluded().throws, ...excluded().verdicts]} />
      <Sentences class="by-day" title={say().byDay} sentences={dayWords(compared(), props.names, speech())} />
      <Measures {...props} />
      <details class="how">
        <summary>{say().about}</summary>
        <p>{say().holds(percent(compared().alpha))}</p>
      </details>
    </div>
  );

  function percent(alpha: number): string {
    return shareText(alpha, speech()) === shareText(0, speech()) ? `< ${shareText(0.01, speech())}` : shareText(alpha, speech());
  }
}

function Measures(props: { readonly found: OpenedComparison; readonly names: Names }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.pair;
  return (
    <section class="single-measures">
      <h3>{say().measures}</h3>
      <dl>
        <For each={measureWords(props.found.compared.measures, speech())}>
          {({ measure, title, difference, interval }) => <div data-measure={measure}><dt>{title}</dt><dd><b>{difference}</b><Show when={interval}><span class="quiet">{interval}</span></Show></dd></div>}
        </For>
      </dl>
      <p class="quiet small">{say().measuresWhy(props.names.b, props.names.a)}</p>
    </section>
  );
}

export function Sentences(props: { readonly class: string; readonly title: string; readonly sentences: readonly string[] }) {
  return (
    <Show when={props.sentences.length > 0}>
      <section class={props.class}>
        <h3>{props.title}</h3>
        <ul><For each={props.sentences}>{(sentence) => <li>{sentence}</li>}</For></ul>
      </section>
    </Show>
  );
}
