import { createResource, createSignal, For, Show } from 'solid-js';
import type { BroughtImport } from '../../core/facts/import-wire.ts';
import { AskTwice } from '../bench/fields/ask-twice.tsx';
import { askForImports, withdrawImport } from '../live/import-file.ts';
import { answered, type Unheard } from '../live/recorded.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { momentText } from '../words/moments.ts';
import { numberText } from '../words/numbers.ts';
import { useSpeech } from '../words/use-words.tsx';

/** Null where nobody had signed in: whoever was at this machine. */
function coachIn({ by }: BroughtImport): string | null {
  return by.startsWith('coach:') && by !== 'coach:this-machine' ? by.slice('coach:'.length) : null;
}

/** What came in so far, each with a way back: the wrong file, or the right one for the wrong athlete. */
export function BroughtIn() {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const [imports, { refetch }] = createResource(() => answered(askForImports()));
  const [told, setTold] = createSignal<string | null>(null);
  const [trouble, setTrouble] = createSignal<Unheard | null>(null);
  const refused = () => {
    const why = trouble();
    return why?.kind === 'refused' ? why : null;
  };
  const count = (throws: number) => numberText(throws, 0, speech().language);
  const takeBack = async (one: BroughtImport): Promise<void> => {
    const answer = await withdrawImport(one);
    setTrouble(answer.kind === 'answer' ? null : answer);
    setTold(answer.kind === 'answer' ? say().withdraw.done(one.fileName, count(answer.value.throws), answer.value.sessions) : null);
    await refetch();
  };
  return (
    <section class="import-about import-brought" aria-labelledby="import-brought">
      <h2 id="import-brought">{say().withdraw.title}</h2>
      <div aria-live="polite">
        <Show when={told()}>{(said) => <p>{said()}</p>}</Show>
        <Show when={trouble()}><p class="refusal" role="alert"><Show when={refused()} fallback={say().silent}>{(why) => <RefusalWords refusal={why()} />}</Show></p></Show>
      </div>
      <ul>
        <For each={imports() ?? []} fallback={<li class="quiet">{say().withdraw.none}</li>}>
          {(one) => (
            <li>
              <p><b>{one.fileName}</b> <span class="quiet">{momentText(one.atMs, Intl.DateTimeFormat().resolvedOptions().timeZone, speech().language)}<Show when={coachIn(one)}>{(name) => <> · {name()}</>}</Show></span></p>
              <p>{say().withdraw.holds(count(one.throws), one.sessions)} · {one.athletes.join(', ')} · {one.mounds.join(', ')}</p>
              <AskTwice label={say().withdraw.take(one.fileName)} question={say().withdraw.sure(count(one.throws), one.sessions)} yes={say().withdraw.yes} onYes={() => void takeBack(one)} />
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}
