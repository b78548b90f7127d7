import { For } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import type { KeyGroup } from './key-table.ts';

/** The list of all keys, over everything else until it is closed: by its button, by Escape, or by a tap beside it. */
export function KeyList(props: { readonly groups: readonly KeyGroup[]; readonly ref: (dialog: HTMLDialogElement) => void }) {
  const words = useWords();
  let dialog!: HTMLDialogElement;
  return (
    <dialog class="key-list" aria-label={words().playback.keys.title} ref={(element) => { dialog = element; props.ref(element); }} onClick={(event) => { if (event.target === dialog) dialog.close(); }}>
      <header><h2>{words().playback.keys.title}</h2><button type="button" onClick={() => dialog.close()}>{words().playback.keys.close}</button></header>
      <For each={props.groups}>
        {(group) => (
          <section>
            <h3>{group.name}</h3>
            <dl><For each={group.rows}>{({ names, does }) => <div><dt><For each={names}>{(name) => <kbd>{name}</kbd>}</For></dt><dd>{does}</dd></div>}</For></dl>
          </section>
        )}
      </For>
    </dialog>
  );
}
