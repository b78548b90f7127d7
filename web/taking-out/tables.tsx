import { createSignal, Show } from 'solid-js';
import { useSpeech } from '../words/use-words.tsx';
import { factsAddress, throwsAddress, type Of } from './addresses.ts';
import './taking-out.css';

/** Links that save throws as a table, and facts; names only where they are wanted. */
export function Tables(props: { readonly of: Of }) {
  const speech = useSpeech();
  const say = () => speech().words.takingOut;
  /** An athlete's facts, and what to mind about them, stand where the tables do already. */
  const isAthlete = () => props.of.kind === 'athlete';
  const [names, setNames] = createSignal(true);
  const table = (format: 'csv' | 'parquet') => throwsAddress(props.of, { format, units: speech().units, names: names() });
  return (
    <div class="taking-out" role="group" aria-label={say().throws[props.of.kind]}>
      <p class="taking-out-what">{say().throws[props.of.kind]}</p>
      <p class="taking-out-links">
        <a href={table('csv')} download="">CSV</a>
        <a href={table('parquet')} download="">Parquet</a>
        <Show when={!isAthlete()}><a href={factsAddress(props.of)} download="">{say().facts}</a></Show>
      </p>
      <label class="tick"><input type="checkbox" checked={names()} onChange={(event) => setNames(event.currentTarget.checked)} /><span>{say().names}</span></label>
      <Show when={!isAthlete()}><p class="quiet">{say().keep}</p></Show>
    </div>
  );
}
