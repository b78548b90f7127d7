import { For, Show } from 'solid-js';
import { trialWords } from '../grip/grip-words.ts';
import { missMeanWords, onTargetWords, spreadWords } from '../trials/row-words.ts';
import type { TrialRow } from '../trials/rows.ts';
import { useSpeech } from '../words/use-words.tsx';

/** The trials of a session as they were thrown, in the order they were begun. */
export function TrialTable(props: { readonly rows: readonly TrialRow[] }) {
  const speech = useSpeech();
  const say = () => speech().words.report;
  const column = () => say().columns;
  return (
    <Show when={props.rows.length > 0} fallback={<p>{say().noTrials}</p>}>
      <table>
        <thead>
          <tr><th scope="col">{column().trial}</th><th scope="col">{column().grip}</th><th scope="col">{column().throws}</th><th scope="col">{column().onTarget}</th><th scope="col">{column().spread}</th><th scope="col">{column().miss}</th></tr>
        </thead>
        <tbody><For each={props.rows}>{(row) => <Row row={row} />}</For></tbody>
      </table>
      <p class="quiet">{say().missIs}</p>
    </Show>
  );
}

function Row(props: { readonly row: TrialRow }) {
  const speech = useSpeech();
  const words = () => speech().words;
  const column = () => words().report.columns;
  const excluded = () => (props.row.excluded === 0 ? '' : `, ${words().trials.frame.excluded(props.row.excluded)}`);
  return (
    <tr>
      <th scope="row">{props.row.letter}, {words().trade.intent[props.row.intent]}, {words().trade.stage[props.row.stage]}</th>
      <td data-column={column().grip}>{trialWords(props.row, words())}</td>
      <td data-column={column().throws}>{props.row.throws.length - props.row.excluded}{excluded()}</td>
      <td data-column={column().onTarget}>{onTargetWords(props.row.all.onTarget, speech())}</td>
      <td data-column={column().spread}>{spreadWords(props.row.all.spread, speech())}</td>
      <td data-column={column().miss}>{missMeanWords(props.row.all.meanMiss, speech())}</td>
    </tr>
  );
}
