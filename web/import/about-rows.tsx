import { createMemo, createResource, createSignal, For, Show } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import { INTENTS, SIGHTS, type Intent } from '../../core/facts/vocabulary.ts';
import type { Field } from '../../core/imports/fields.ts';
import { intentOf } from '../../core/imports/intent-words.ts';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { textOf } from '../../core/imports/read-cell.ts';
import type { FileLook } from '../../core/imports/wire.ts';
import { StageFields } from '../bench/fields/stage-fields.tsx';
import { answered, askForAthletes } from '../live/recorded.ts';
import { useSpeech } from '../words/use-words.tsx';
import { Whose } from './whose.tsx';

/** What no column says and somebody has to: whose the rows are, where they were thrown, and what words for pitches mean. */
export function AboutRows(props: { readonly look: FileLook; readonly layout: Layout; readonly strangers: readonly string[]; readonly choices: ImportChoices; readonly onChoices: (choices: ImportChoices) => void }) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const [known] = createResource(() => answered(askForAthletes()));
  const [made, setMade] = createSignal<readonly Athlete[]>([]);
  const athletes = () => [...(known() ?? []), ...made()];
  const change = (part: Partial<ImportChoices>): void => props.onChoices({ ...props.choices, ...part });
  const columnOf = (field: Field): number => props.layout.columns.findIndex((column) => column.field === field);
  const valuesOf = (field: Field): string[] => (columnOf(field) === -1 ? [] : [...new Set(props.look.rows.map((row) => textOf(row[columnOf(field)])).filter((text) => text !== ''))]);
  const names = createMemo(() => [...new Set([...valuesOf('athlete'), ...props.strangers])]);
  const pitches = createMemo(() => valuesOf('intent'));
  const takeNew = (athlete: Athlete, part: Partial<ImportChoices>): void => {
    setMade([...made(), athlete]);
    change(part);
  };
  const named = (name: string, athlete: Athlete | null): Partial<ImportChoices> => {
    const { [name]: _, ...others } = props.choices.athletes;
    return { athletes: athlete === null ? others : { ...others, [name]: athlete } };
  };
  const meant = (word: string): Intent | null => (Object.hasOwn(props.choices.intents, word) ? props.choices.intents[word]! : intentOf(word));
  return (
    <>
      <section class="import-about" aria-labelledby="import-whose">
        <h2 id="import-whose">{say().whose}</h2>
        <Show when={columnOf('athlete') !== -1} fallback={<Whose label={say().everybodys} name="" known={athletes()} chosen={props.choices.athlete} onChoose={(athlete) => change({ athlete })} onNew={(athlete) => takeNew(athlete, { athlete })} />}>
          <For each={names()}>
            {(name) => <Whose label={say().called(name)} name={name} known={athletes()} chosen={props.choices.athletes[name] ?? null} onChoose={(athlete) => change(named(name, athlete))} onNew={(athlete) => takeNew(athlete, named(name, athlete))} />}
          </For>
        </Show>
      </section>
      <Show when={pitches().length > 0}>
        <section class="import-about" aria-labelledby="import-pitches">
          <h2 id="import-pitches">{say().pitches}</h2>
          <div class="import-words">
            <For each={pitches()}>
              {(word) => (
                <label class="import-field">
                  {say().called(word)}
                  <select onChange={(event) => change({ intents: { ...props.choices.intents, [word]: event.currentTarget.value === '' ? null : (event.currentTarget.value as Intent) } })}>
                    <option value="" selected={meant(word) === null}>{say().notSaid}</option>
                    <For each={INTENTS}>{(intent) => <option value={intent} selected={meant(word) === intent}>{speech().words.trade.intent[intent]}</option>}</For>
                  </select>
                </label>
              )}
            </For>
          </div>
        </section>
      </Show>
      <section class="import-about" aria-labelledby="import-where">
        <h2 id="import-where">{say().where}</h2>
        <div class="import-words">
          <label class="import-field">{say().mound} <input value={props.choices.mound} required pattern="[A-Za-z0-9][A-Za-z0-9._\-]{0,63}" autocomplete="off" onInput={(event) => change({ mound: event.currentTarget.value.trim() })} /></label>
          <Show when={columnOf('moment') === -1 && columnOf('date') === -1}>
            <label class="import-field">{say().day} <input type="date" required value={props.choices.day ?? ''} onInput={(event) => change({ day: event.currentTarget.value === '' ? null : event.currentTarget.value })} /></label>
          </Show>
          <label class="import-field">
            {say().zone}
            <select onChange={(event) => change({ timeZone: event.currentTarget.value })}>
              <For each={[...new Set([props.choices.timeZone, ...Intl.supportedValuesOf('timeZone')])]}>{(zone) => <option value={zone} selected={props.choices.timeZone === zone}>{zone}</option>}</For>
            </select>
          </label>
          <label class="import-field">
            {say().sight}
            <select onChange={(event) => change({ sight: event.currentTarget.value as ImportChoices['sight'] })}>
              <For each={SIGHTS}>{(sight) => <option value={sight} selected={props.choices.sight === sight}>{speech().words.trade.sight[sight]}</option>}</For>
            </select>
          </label>
        </div>
        <StageFields draft={props.choices} units={speech().units} onDraft={({ stage, distanceM, effort }) => change({ stage, distanceM, effort })} />
      </section>
    </>
  );
}
