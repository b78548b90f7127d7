import { createResource, createSignal, For, Show } from 'solid-js';
import type { Layout } from '../../core/imports/layout.ts';
import { askForRecipes, keepRecipe, removeRecipe, renameRecipe } from '../live/import-file.ts';
import { answered } from '../live/recorded.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { useSpeech } from '../words/use-words.tsx';

/** What columns are, kept under a name; and the ones that are kept already. */
export function Recipes(props: { readonly layout: Layout }) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const [recipes, { refetch }] = createResource(askForRecipes);
  const listed = () => {
    const answer = recipes();
    return answer?.kind === 'answer' ? answer.value : [];
  };
  const refused = () => {
    const answer = recipes();
    return answer?.kind === 'refused' ? answer : null;
  };
  const [name, setName] = createSignal('');
  const [kept, setKept] = createSignal<string | null>(null);
  const keep = async (): Promise<void> => {
    if (name().trim() === '') return;
    const made = await answered(keepRecipe(name().trim(), props.layout));
    if (made === null) return;
    setKept(made.name);
    setName('');
    await refetch();
  };
  const change = async (act: Promise<unknown>): Promise<void> => {
    setKept(null);
    await act;
    await refetch();
  };
  return (
    <section class="import-about" aria-labelledby="import-recipes">
      <h2 id="import-recipes">{say().recipes}</h2>
      <p class="quiet">{say().recipesWhy}</p>
      <Show when={refused() === null} fallback={<p class="refusal" role="alert"><RefusalWords refusal={refused()!} /></p>}>
        <form class="import-ways" onSubmit={(event) => { event.preventDefault(); void keep(); }}>
          <label class="import-field">{say().recipeName} <input value={name()} maxLength={60} required autocomplete="off" onInput={(event) => setName(event.currentTarget.value)} /></label>
          <button type="submit">{say().keep}</button>
        </form>
        <p role="status"><Show when={kept()}>{(one) => say().kept(one())}</Show></p>
        <ul class="import-recipes">
          <For each={listed()} fallback={<li class="quiet">{say().noRecipes}</li>}>
            {(recipe) => (
              <li>
                <input value={recipe.name} maxLength={60} aria-label={say().rename(recipe.name)} autocomplete="off" onChange={(event) => void change(renameRecipe(recipe.id, event.currentTarget.value))} />
                <span class="quiet">{say().columnsIn(recipe.layout.columns.length)}</span>
                <button type="button" onClick={() => void change(removeRecipe(recipe.id))}>{say().remove(recipe.name)}</button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </section>
  );
}
