import { For, Show } from 'solid-js';
import type { CheckAnswer } from '../../core/facts/import-wire.ts';
import { refusedAddress } from '../live/import-file.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { dateText, isoDayText } from '../words/moments.ts';
import { numberText } from '../words/numbers.ts';
import { useSpeech } from '../words/use-words.tsx';

/** What the file came to: what would be stored, what is refused and why, and the decision. */
export function Checked(props: { readonly id: string; readonly checked: CheckAnswer; readonly onStore: () => void; readonly onBack: () => void }) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const count = (value: number): string => numberText(value, 0, speech().language);
  return (
    <section class="import-about">
      <h2>{say().comes(count(props.checked.good), props.checked.sessions, props.checked.athletes)}</h2>
      <p>
        <Show when={props.checked.days}>{(days) => <>{say().between(isoDayText(days().first, speech().language), isoDayText(days().last, speech().language))} · </>}</Show>
        {props.checked.mounds.join(', ')}
      </p>
      <Show when={props.checked.earlier}>{(earlier) => <p class="import-lack">{say().earlier(earlier().sessions, dateText(earlier().lastAtMs, null, speech().language))}</p>}</Show>
      <Show when={props.checked.refused > 0} fallback={<p>{say().noneRefused}</p>}>
        <h3>{say().refused(count(props.checked.refused))}</h3>
        <p><a class="import-save" href={refusedAddress(props.id)} download="">{say().takeRefused}</a></p>
        <Show when={props.checked.refused > props.checked.shown.length}><p>{say().shown(props.checked.shown.length)}</p></Show>
        <table class="import-refused">
          <thead><tr><th scope="col" class="number">{say().line}</th><th scope="col">{say().column}</th><th scope="col">{say().reason}</th></tr></thead>
          <tbody><For each={props.checked.shown}>{(row) => <tr><td class="number">{row.line}</td><td>{row.column}</td><td><RefusalWords refusal={row} /></td></tr>}</For></tbody>
        </table>
      </Show>
      <div class="import-ways">
        <Show when={props.checked.good > 0}>
          <button type="button" class="main" onClick={() => props.onStore()}>{props.checked.refused === 0 ? say().storeAll(count(props.checked.good)) : say().storeGood(count(props.checked.good))}</button>
        </Show>
        <button type="button" onClick={() => props.onBack()}>{say().back}</button>
      </div>
    </section>
  );
}
