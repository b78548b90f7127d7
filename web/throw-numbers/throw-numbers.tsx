import { createMemo, Index, Show } from 'solid-js';
import type { SessionView, ThrowView } from '../../core/facts/views.ts';
import { unbroken } from '../wall/unbroken.ts';
import { useSpeech } from '../words/use-words.tsx';
import { numberGroups } from './groups.ts';
import type { NumberRow } from './number-row.ts';
import './throw-numbers.css';

/** Every number of a throw, in groups; a tap on one says in a line what it tells. What was opened stays open when the throw changes. */
export function ThrowNumbers(props: { readonly thrown: ThrowView; readonly session: SessionView; readonly level: 'h3' | 'h4' }) {
  const speech = useSpeech();
  const groups = createMemo(() => numberGroups(props.thrown, props.session, speech()));
  return (
    <div class="throw-numbers">
      <Index each={groups()}>
        {(group) => (
          <section aria-label={group().name} data-group={group().group}>
            <Show when={props.level === 'h3'} fallback={<h4>{group().name}</h4>}><h3>{group().name}</h3></Show>
            <ul><Index each={group().rows}>{(row) => <Row row={row()} />}</Index></ul>
          </section>
        )}
      </Index>
    </div>
  );
}

function Row(props: { readonly row: NumberRow }) {
  return (
    <li data-number={props.row.number} classList={{ missing: !props.row.known }}>
      <details>
        <summary>
          <span class="number-name">{props.row.name}</span> <span class="number-value">{unbroken(props.row.value)}</span>
          <Show when={props.row.rests.length > 0}> <small>{unbroken(props.row.rests.join(', '))}</small></Show>
        </summary>
        <p>{props.row.tells}</p>
      </details>
    </li>
  );
}
