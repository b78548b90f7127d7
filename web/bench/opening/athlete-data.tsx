import { createSignal, For, Match, Show, Switch } from 'solid-js';
import type { Athlete } from '../../../core/facts/coach.ts';
import type { ErasedAnswer, Refusal } from '../../../core/facts/wire.ts';
import { TextField } from '../../desk/text-field.tsx';
import { eraseAthlete } from '../../live/athlete-data.ts';
import { factsAddress } from '../../taking-out/addresses.ts';
import { Tables } from '../../taking-out/tables.tsx';
import { RefusalWords } from '../../standing/refusal.tsx';
import { useWords } from '../../words/use-words.tsx';

type Erasing = { readonly kind: 'not-asked' | 'wrong-name' | 'waiting' | 'silent' } | Refusal | ErasedAnswer;

/** All that is kept of one athlete: saved as a file, or erased once the name is typed. */
export function AthleteData(props: { readonly athlete: Athlete; readonly onBack: (erased: boolean) => void }) {
  const words = useWords();
  const say = () => words().bench.athleteData;
  const [name, setName] = createSignal('');
  const [erasing, setErasing] = createSignal<Erasing>({ kind: 'not-asked' });
  const erased = () => {
    const now = erasing();
    return now.kind === 'erased' ? now : null;
  };
  const refused = () => {
    const now = erasing();
    return now.kind === 'refused' ? now : null;
  };
  const isName = () => name().trim().normalize() === props.athlete.name.normalize();
  const erase = async () => {
    if (erasing().kind === 'waiting') return;
    if (!isName()) return void setErasing({ kind: 'wrong-name' });
    setErasing({ kind: 'waiting' });
    setErasing(await eraseAthlete(props.athlete.id, name().trim()));
  };
  return (
    <section class="athlete-data">
      <Show when={erased()} fallback={<>
        <h2 tabindex="-1" ref={focusSoon}>{say().of(props.athlete.name)}</h2>
        <p>{say().saveWhy}</p>
        <p><a class="save" href={factsAddress({ kind: 'athlete', id: props.athlete.id })} download="">{say().save}</a></p>
        <Tables of={{ kind: 'athlete', id: props.athlete.id }} />
        <Tables of={{ kind: 'all' }} />
        <form class="erase" noValidate onSubmit={(event) => { event.preventDefault(); void erase(); }}>
          <h3>{say().erase}</h3>
          <p>{say().erases}</p>
          <p>{say().erasesNot}</p>
          <p>{say().first}</p>
          <TextField label={say().typeName(props.athlete.name)} text={name()} longest={60} wrong={erasing().kind === 'wrong-name' ? say().wrongName : null} onText={setName} />
          <div aria-live="polite">
            <Switch>
              <Match when={erasing().kind === 'waiting'}><p class="waiting">{say().erasing}</p></Match>
              <Match when={erasing().kind === 'silent'}><p class="refusal">{say().silent}</p></Match>
              <Match when={refused()}>{(why) => <p class="refusal"><RefusalWords refusal={why()} /></p>}</Match>
            </Switch>
          </div>
          <div class="row">
            <button type="submit" class="main" aria-disabled={erasing().kind === 'waiting'}>{say().erase}</button>
            <button type="button" onClick={() => props.onBack(false)}>{say().back}</button>
          </div>
        </form>
      </>}>
        {(what) => <Erased what={what()} onBack={() => props.onBack(true)} />}
      </Show>
    </section>
  );
}

/** What was erased, and where the athlete may still be found. */
function Erased(props: { readonly what: ErasedAnswer; readonly onBack: () => void }) {
  const words = useWords();
  const say = () => words().bench.athleteData;
  return (
    <>
      <h2 tabindex="-1" ref={focusSoon}>{say().erased}</h2>
      <p>{say().gone(props.what.throws, props.what.sessions, props.what.mounds.join(', '))}</p>
      <Show when={!props.what.swept}><p class="wrong">{say().unswept}</p></Show>
      <Show when={props.what.stillIn.length > 0} fallback={<p>{say().inNone}</p>}>
        <p class="wrong">{say().stillIn}</p>
        <ul class="still-in"><For each={props.what.stillIn}>{(file) => <li><code>{file}</code></li>}</For></ul>
      </Show>
      <Show when={props.what.named.length > 0}><p>{say().named(props.what.named.length)}</p></Show>
      <div class="row"><button type="button" class="main" onClick={() => props.onBack()}>{say().back}</button></div>
    </>
  );
}

/** Once the heading stands in the page: whoever came by keyboard reads on from there. */
function focusSoon(heading: HTMLElement): void {
  queueMicrotask(() => heading.focus());
}
