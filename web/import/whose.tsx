import { createSignal, For, Show } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import { athleteFrom, emptyDraft } from '../bench/opening/draft.ts';
import { NewAthlete } from '../bench/opening/new-athlete.tsx';
import { yearNow } from '../live/clock.ts';
import { freshId } from '../live/fresh-id.ts';
import { useSpeech } from '../words/use-words.tsx';

/** Who is meant by a name in the file, or by all of its rows: somebody known, or somebody new. */
export function Whose(props: {
  readonly label: string;
  /** As the file has it; empty where it has none. */
  readonly name: string;
  readonly known: readonly Athlete[];
  readonly chosen: Athlete | null;
  readonly onChoose: (athlete: Athlete | null) => void;
  readonly onNew: (athlete: Athlete) => void;
}) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const [draft, setDraft] = createSignal(emptyDraft(speech().units, speech().language));
  const [isNew, setIsNew] = createSignal(false);
  const [missing, setMissing] = createSignal<'name' | 'hand' | 'birthYear' | null>(null);
  const choose = (value: string): void => {
    setIsNew(value === 'new');
    if (value === 'new') setDraft({ ...emptyDraft(speech().units, speech().language), name: props.name });
    props.onChoose(props.known.find(({ id }) => id === value) ?? null);
  };
  const take = (): void => {
    const made = athleteFrom(draft(), freshId(), yearNow());
    setMissing('missing' in made ? made.missing : null);
    if ('missing' in made) return;
    setIsNew(false);
    props.onNew(made.athlete);
  };
  return (
    <div class="import-whose">
      <label class="import-field">
        {props.label}
        <select onChange={(event) => choose(event.currentTarget.value)}>
          <option value="" selected={props.chosen === null && !isNew()}>{say().choose}</option>
          <For each={props.known}>{(athlete) => <option value={athlete.id} selected={props.chosen?.id === athlete.id}>{athlete.name}</option>}</For>
          <option value="new" selected={isNew()}>{say().someoneNew}</option>
        </select>
      </label>
      <Show when={isNew()}>
        <NewAthlete draft={draft()} missing={missing()} onDraft={setDraft} />
        <div><button type="button" onClick={take}>{say().takeNew(draft().name.trim() === '' ? props.name : draft().name.trim())}</button></div>
      </Show>
    </div>
  );
}
