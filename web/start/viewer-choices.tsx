import { createUniqueId, For } from 'solid-js';
import type { ChosenHere } from '../chosen-here.ts';
import { theme } from '../theme.ts';
import { language, units } from '../viewer.ts';
import { useWords } from '../words/use-words.tsx';

/** What this viewer wants on every screen opened here, whoever throws. */
export function ViewerChoices() {
  const words = useWords();
  const say = () => words().start.choices;
  return (
    <section class="start-choices" aria-labelledby="start-choices">
      <h2 id="start-choices">{say().title}</h2>
      <div>
        <Choice name={say().language} own={say().athletes} chosen={language} options={[['en', 'English'], ['es', 'Español']]} />
        <Choice name={say().units} own={say().athletes} chosen={units} options={[['imperial', say().imperial], ['metric', say().metric]]} />
        <Choice name={say().theme} own={say().devices} chosen={theme} options={[['light', say().light], ['dark', say().dark], ['sun', say().sun]]} />
      </div>
    </section>
  );
}

function Choice<T extends string>(props: { readonly name: string; readonly own: string; readonly chosen: ChosenHere<T>; readonly options: readonly (readonly [T, string])[] }) {
  const id = createUniqueId();
  const choose = (value: string): void => props.chosen.choose(props.options.find(([option]) => option === value)?.[0] ?? null);
  return (
    <label for={id}>
      {props.name}
      <select id={id} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="" selected={props.chosen.chosen() === null}>{props.own}</option>
        <For each={props.options}>{([option, said]) => <option value={option} selected={props.chosen.chosen() === option}>{said}</option>}</For>
      </select>
    </label>
  );
}
