import '../words/of-imports.ts';
import { createSignal, Match, Show, Switch } from 'solid-js';
import type { CheckAnswer, StoreAnswer } from '../../core/facts/import-wire.ts';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { lacks } from '../../core/imports/lacks.ts';
import type { LookAnswer } from '../../core/imports/wire.ts';
import { STAGE_AT_FIRST } from '../bench/opening/draft.ts';
import { beginImport, endImport, lookAtFile, sendFile, storeImport } from '../live/import-file.ts';
import type { Answer, Unheard } from '../live/recorded.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { numberText } from '../words/numbers.ts';
import { Speaking, useSpeech } from '../words/use-words.tsx';
import { AboutRows } from './about-rows.tsx';
import { BroughtIn } from './brought-in.tsx';
import { Checked } from './checked.tsx';
import { Columns } from './columns.tsx';
import { FirstStep } from './first-step.tsx';
import { Recipes } from './recipes.tsx';
import './import.css';

/** Recorded throws come in from a file: what its columns are, whose the rows are, what would be refused, and only then the storing. */
export default function ImportScreen() {
  return <Speaking athlete={null}><Importing /></Speaking>;
}

type Step =
  | { readonly at: 'choosing' | 'looking' | 'columns' | 'storing' }
  | { readonly at: 'checking'; readonly share: number; readonly ending: AbortController }
  | { readonly at: 'checked'; readonly id: string; readonly checked: CheckAnswer }
  | { readonly at: 'stored'; readonly stored: StoreAnswer };

/** A server that was asked for a mound leads back to it. */
const MOUND_AT_FIRST = new URLSearchParams(location.search).get('mound') ?? 'north-1';

function firstChoices(): ImportChoices {
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  return { ...STAGE_AT_FIRST, athlete: null, athletes: {}, intents: {}, mound: MOUND_AT_FIRST, timeZone, day: null, device: 'file', sight: 'full-flight', axis: 'none' };
}

function Importing() {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const [step, setStep] = createSignal<Step>({ at: 'choosing' });
  const [trouble, setTrouble] = createSignal<Unheard | 'broken' | null>(null);
  const [file, setFile] = createSignal<File | null>(null);
  const [look, setLook] = createSignal<LookAnswer | null>(null);
  const [layout, setLayout] = createSignal<Layout | null>(null);
  const [recipe, setRecipe] = createSignal<string | null>(null);
  const [choices, setChoices] = createSignal(firstChoices());
  const [strangers, setStrangers] = createSignal<readonly string[]>([]);
  document.title = `Offpace · ${say().title}`;

  /** The value of an answer; otherwise null, and why not is shown. */
  const good = <T,>(answer: Answer<T>): T | null => {
    setTrouble(answer.kind === 'answer' ? null : answer);
    return answer.kind === 'answer' ? answer.value : null;
  };
  const choose = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    setFile(chosen);
    setStep({ at: 'looking' });
    const seen = good(await lookAtFile(chosen));
    setLook(seen);
    setLayout(seen?.recipe?.layout ?? seen?.layout ?? null);
    setRecipe(seen?.recipe?.name ?? null);
    setStrangers([]);
    setStep({ at: seen === null ? 'choosing' : 'columns' });
  };
  const change = (next: Layout): void => {
    setRecipe(null);
    setLayout(next);
  };
  const check = async (): Promise<void> => {
    const [sent, how] = [file()!, layout()!];
    const begun = good(await beginImport(sent.name, how, choices()));
    if (begun === null) return;
    const ending = new AbortController();
    setStep({ at: 'checking', share: 0, ending });
    const answer = await sendFile(begun.id, sent, (share) => setStep({ at: 'checking', share, ending }), ending.signal);
    if (ending.signal.aborted) {
      await endImport(begun.id);
      setTrouble('broken');
      return void setStep({ at: 'columns' });
    }
    const checked = good(answer);
    setStrangers(checked?.strangers ?? []);
    setStep(checked === null ? { at: 'columns' } : { at: 'checked', id: begun.id, checked });
  };
  const store = async (id: string, checked: CheckAnswer): Promise<void> => {
    setStep({ at: 'storing' });
    const stored = good(await storeImport(id, checked.refused === 0 ? 'all-or-nothing' : 'keep-the-good'));
    setStep(stored === null ? { at: 'checked', id, checked } : { at: 'stored', stored });
  };
  const back = async (id: string): Promise<void> => {
    setStep({ at: 'columns' });
    await endImport(id);
  };
  const at = <A extends Step['at']>(wanted: A) => {
    const now = step();
    return now.at === wanted ? (now as Extract<Step, { at: A }>) : null;
  };
  const lack = () => (layout() === null ? null : lacks(layout()!, choices()));

  return (
    <main class="import">
      <header>
        <p><a href="/">Offpace</a></p>
        <h1>{say().title}</h1>
      </header>
      <Show when={at('choosing') ?? at('looking') ?? at('columns')}>
        <label class="import-field import-file">
          {say().file}
          <input type="file" accept=".csv,.tsv,.txt,.jsonl,.ndjson,text/csv,application/x-ndjson" onChange={(event) => void choose(event.currentTarget.files?.[0])} />
          <small class="quiet">{say().fileWhy}</small>
        </label>
      </Show>
      <div aria-live="polite">
        <Switch>
          <Match when={at('looking')}><p class="quiet">{say().looking}</p></Match>
          <Match when={at('storing')}><p class="quiet">{say().storing}</p></Match>
        </Switch>
        <Trouble trouble={trouble()} />
      </div>
      <Switch>
        <Match when={at('choosing')}><FirstStep /><BroughtIn /></Match>
        <Match when={at('columns') !== null && layout() !== null}>
          <form class="import-form" onSubmit={(event) => { event.preventDefault(); void check(); }}>
            <Columns look={look()!} layout={layout()!} recipe={recipe()} onLayout={change} />
            <AboutRows look={look()!} layout={layout()!} strangers={strangers()} choices={choices()} onChoices={setChoices} />
            <Show when={lack()}>{(code) => <p class="import-lack">{say().lacks[code()]}</p>}</Show>
            <div><button type="submit" class="main" disabled={lack() !== null}>{say().check}</button></div>
          </form>
          <Recipes layout={layout()!} />
        </Match>
        <Match when={at('checking')}>
          {(checking) => (
            <section class="import-checking">
              <label class="import-field">{say().checking(`${numberText(checking().share * 100, 0, speech().language)} %`)} <progress max="1" value={checking().share} /></label>
              <div><button type="button" onClick={() => checking().ending.abort()}>{say().breakOff}</button></div>
            </section>
          )}
        </Match>
        <Match when={at('checked')}>{(now) => <Checked id={now().id} checked={now().checked} onStore={() => void store(now().id, now().checked)} onBack={() => void back(now().id)} />}</Match>
        <Match when={at('stored')}>
          {(now) => (
            <section class="import-about">
              <h2>{say().stored(numberText(now().stored.throws, 0, speech().language), now().stored.sessions)}</h2>
              <p><a href="/playback">{say().toSessions}</a></p>
              <div><button type="button" onClick={() => setStep({ at: 'choosing' })}>{say().another}</button></div>
              <BroughtIn />
            </section>
          )}
        </Match>
      </Switch>
    </main>
  );
}

function Trouble(props: { readonly trouble: Unheard | 'broken' | null }) {
  const speech = useSpeech();
  const refused = () => {
    const { trouble } = props;
    return trouble !== null && trouble !== 'broken' && trouble.kind === 'refused' ? trouble : null;
  };
  return (
    <Show when={props.trouble !== null}>
      <p class="refusal" role="alert"><Show when={refused()} fallback={props.trouble === 'broken' ? speech().words.imports.broken : speech().words.imports.silent}>{(why) => <RefusalWords refusal={why()} />}</Show></p>
    </Show>
  );
}
