import { For, Show } from 'solid-js';
import { STAGES } from '../../../core/facts/vocabulary.ts';
import { useWords } from '../../words/use-words.tsx';
import { FIELDS, typedIn, type Typed } from './question.ts';

/** What sessions are looked for by; the list follows while it is typed. */
export function SearchForm(props: { readonly typed: Typed; readonly onTyped: (typed: Typed) => void }) {
  const words = useWords();
  const say = () => words().playback.search;
  const asked = () => FIELDS.some((field) => props.typed[field] !== '');
  const change = (field: keyof Typed) => (event: { readonly currentTarget: { readonly value: string } }) => props.onTyped({ ...props.typed, [field]: event.currentTarget.value });
  return (
    <search aria-label={say().title}>
      {/* In a hand the list comes first, unless something is looked for already. */}
      <details open={innerWidth > 640 || asked()}><summary>{say().title}</summary>
      <form class="session-search" onSubmit={(event) => event.preventDefault()}>
        <For each={FIELDS}>
          {(field) => (
            <label data-field={field}>{say().fields[field]}
              {field === 'stage' ? (
                <select value={props.typed.stage} onChange={change('stage')}>
                  <option value="">{say().anyStage}</option>
                  <For each={STAGES}>{(stage) => <option value={stage}>{words().trade.stage[stage]}</option>}</For>
                </select>
              ) : <input type={field === 'from' || field === 'to' ? 'date' : 'text'} autocomplete="off" maxLength={100} value={props.typed[field]} onInput={change(field)} />}
            </label>
          )}
        </For>
        <Show when={asked()}><button type="button" onClick={() => props.onTyped(typedIn(''))}>{say().clear}</button></Show>
      </form>
      </details>
    </search>
  );
}
