import { createEffect, For, Show } from 'solid-js';
import { drawDifference } from '../charts/difference-line.ts';
import type { OpenedComparison } from '../trials/comparison-of.ts';
import { differenceData } from '../trials/difference-data.ts';
import { entryNames } from '../trials/names.ts';
import { becauseWords, cautionWords, excludedWords, verdictWords } from '../trials/verdict-words.ts';
import { useSpeech } from '../words/use-words.tsx';

const LINE = { width: 420, height: 84, textPx: 13 } as const;

/** The verdicts of the comparisons that this session has a day in, as the log stands now. */
export function Verdicts(props: { readonly comparisons: readonly OpenedComparison[] }) {
  const speech = useSpeech();
  const say = () => speech().words.report;
  return (
    <section class="sheet-verdicts" aria-labelledby="report-verdicts">
      <h2 id="report-verdicts">{say().verdicts}</h2>
      <Show when={props.comparisons.length > 0} fallback={<p>{say().noVerdicts}</p>}>
        <For each={props.comparisons}>{(found) => <One found={found} />}</For>
      </Show>
    </section>
  );
}

function One(props: { readonly found: OpenedComparison }) {
  const speech = useSpeech();
  const names = () => entryNames(props.found.entry);
  const data = () => differenceData(props.found.compared, names(), speech());
  const both = () => (props.found.compared.withExcluded === null ? [] : excludedWords(props.found.compared, props.found.taken, names(), speech()).verdicts);
  const sentences = () => [...becauseWords(props.found.compared, props.found.taken, names(), false, speech()).slice(0, 1), ...both(), ...cautionWords(props.found.compared, props.found.taken, names(), false, speech())];
  return (
    <div class="sheet-verdict" data-k={props.found.entry.k}>
      <p><strong>{speech().words.report.verdict(props.found.entry.k, names().b, names().a, verdictWords(props.found.compared.verdict, names(), speech()))}</strong></p>
      <Show when={data()}>{(difference) => <svg ref={(svg) => createEffect(() => drawDifference(svg, difference(), LINE))} />}</Show>
      <p>{sentences().join(' ')}</p>
    </div>
  );
}
