import { For, Show } from 'solid-js';
import type { SessionFound } from '../../../core/facts/session-search.ts';
import type { Stage } from '../../../core/facts/vocabulary.ts';
import { dateText, momentText } from '../../words/moments.ts';
import { useSpeech, useWords } from '../../words/use-words.tsx';

/** Where a session leads from this list, at a place of its log or at its start. */
export type LeadTo = (session: string, place: number | null) => string;

/** Sessions as a table, each a link to its playback; notes that were looked for lead to what they are about. */
export function SessionRows(props: { readonly found: readonly SessionFound[]; readonly to: LeadTo }) {
  const words = useWords();
  const column = () => words().playback.columns;
  return (
    <table>
      <thead>
        <tr><th scope="col">{column().athlete}</th><th scope="col">{column().when}</th><th scope="col">{column().stage}</th><th scope="col" class="number">{column().throws}</th><th scope="col">{column().trials}</th></tr>
      </thead>
      <tbody><For each={props.found}>{(found) => <Row found={found} to={props.to} />}</For></tbody>
    </table>
  );
}

function Row(props: { readonly found: SessionFound; readonly to: LeadTo }) {
  const speech = useSpeech();
  const words = () => speech().words;
  const say = () => words().playback.search;
  const stages = () => props.found.stages.map((stage) => words().trade.stage[stage as Stage]).join(', ');
  const when = () => momentText(props.found.openedAtMs, props.found.timeZone, speech().language);
  const said = () => [...(props.found.notes > 0 ? [say().notes(props.found.notes)] : []), ...(props.found.bookmarks > 0 ? [say().bookmarks(props.found.bookmarks)] : [])].join(', ');
  return (
    <tr data-session={props.found.id}>
      <th scope="row">
        <a href={props.to(props.found.id, null)}>{props.found.athleteName}</a>
        <Show when={props.found.imported}>{(from) => <small class="row-said">{say().imported(from().fileName, dateText(from().atMs, null, speech().language))}</small>}</Show>
        <Show when={said() !== ''}><small class="row-said">{said()}</small></Show>
        <For each={props.found.notesFound}>{(note) => <a class="row-note" href={props.to(props.found.id, note.place)}>{note.text}</a>}</For>
      </th>
      <td data-column={words().playback.columns.when}>{when()}<Show when={props.found.closedAtMs === null}>{' '}<strong class="open-now">{words().playback.stillOpen}</strong></Show></td>
      <td data-column={words().playback.columns.stage}>{stages() === '' ? words().playback.noStage : stages()}</td>
      <td data-column={words().playback.columns.throws} class="number">{props.found.throws}</td>
      <td data-column={words().playback.columns.trials}>
        <Show when={props.found.trials.length > 0} fallback={words().playback.noTrials}>
          <For each={props.found.trials}>{(letter) => <><Show when={props.found.trialsFound.includes(letter)} fallback={letter}><mark>{letter}</mark></Show>{' '}</>}</For>
        </Show>
      </td>
    </tr>
  );
}
