import { createMemo, createSignal, For, Show } from 'solid-js';
import type { Athlete } from '../../../core/facts/coach.ts';
import { useWords } from '../../words/use-words.tsx';
import { TextField } from '../../desk/text-field.tsx';

/** From how many athletes on a list is looked through by name. */
const FIND_FROM = 9;

/** The athletes that this server knows; one tap chooses. */
export function KnownAthletes(props: { readonly athletes: readonly Athlete[]; readonly chosen: string | null; readonly onChoose: (athlete: Athlete) => void }) {
  const words = useWords();
  const [sought, setSought] = createSignal('');
  const found = createMemo(() => props.athletes.filter(({ name }) => plain(name).includes(plain(sought()))));
  return (
    <section class="known" aria-label={words().bench.opening.known}>
      <Show when={props.athletes.length >= FIND_FROM}>
        <TextField label={words().bench.opening.find} text={sought()} longest={60} onText={setSought} />
      </Show>
      <ul class="people">
        <For each={found()} fallback={<li class="quiet">{words().bench.opening.noneFound}</li>}>
          {(athlete) => (
            <li>
              <button type="button" class="person" aria-pressed={athlete.id === props.chosen} onClick={() => props.onChoose(athlete)}>
                <b>{athlete.name}</b>
                <small>{words().trade.hand[athlete.hand]}, {words().bench.opening.born(String(athlete.birthYear))}</small>
              </button>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function plain(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
