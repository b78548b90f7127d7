import { For, Show } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import { SHEETS, type OpenSheet, type Sheet } from './open-sheet.ts';
import type { OneTap } from './one-tap.ts';

/** The row of acts between two throws: each opens its sheet above; the bookmark is said at once. */
export function Acts(props: { readonly open: OpenSheet; readonly oneTap: OneTap }) {
  const words = useWords();
  const say = () => words().bench.dock;
  const offered = (): readonly Sheet[] => SHEETS.filter((sheet) => sheet !== 'trial' || props.oneTap.mayGoOn());
  return (
    <div class="acts" role="group" aria-label={say().acts}>
      <For each={offered()}>
        {(sheet) => (
          <button type="button" data-sheet={sheet} aria-label={say().actWhole[sheet]} aria-expanded={props.open.sheet() === sheet} aria-controls="dock-sheet" onClick={() => props.open.toggle(sheet)}>
            {say().act[sheet]}
          </button>
        )}
      </For>
      <Show when={props.oneTap.newest()}>
        {(thrown) => (
          <button type="button" class="bookmark" aria-label={say().bookmark(words().trade.throwNumber(thrown().number))} aria-pressed={thrown().bookmarked} onClick={() => props.oneTap.bookmark()}>
            <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M4,2H12V14L8,10.5L4,14Z" /></svg>
          </button>
        )}
      </Show>
    </div>
  );
}
