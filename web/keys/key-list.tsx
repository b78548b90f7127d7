import { createEffect, For } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { keysAct, letKeysAct } from './listen.ts';
import './keys.css';

/** The keys of one kind, and what each does. */
export interface KeyGroup {
  readonly title: string;
  readonly keys: readonly { readonly keys: readonly string[]; readonly does: string }[];
}

/** The keys of a screen, in a dialog over it: opened with the question mark, closed with Escape or its button. */
export function KeyList(props: { readonly groups: readonly KeyGroup[]; readonly open: boolean; readonly onClose: () => void }) {
  const words = useWords();
  const say = () => words().keys;
  let dialog!: HTMLDialogElement;
  createEffect(() => {
    if (props.open && !dialog.open) dialog.showModal();
    else if (!props.open && dialog.open) dialog.close();
  });
  return (
    <dialog class="key-list" ref={dialog} aria-labelledby="key-list-title" onClose={() => props.onClose()}>
      <header>
        <h2 id="key-list-title">{say().title}</h2>
        <button type="button" onClick={() => props.onClose()}>{say().close}</button>
      </header>
      <label class="keys-act"><input type="checkbox" checked={keysAct()} onChange={(event) => letKeysAct(event.currentTarget.checked)} /> <span>{say().act}</span></label>
      <div class="key-groups">
        <For each={props.groups}>
          {(group) => (
            <section>
              <h3>{group.title}</h3>
              <dl>
                <For each={group.keys}>
                  {({ keys, does }) => <div><dt><For each={keys}>{(key) => <kbd>{say().named[key as keyof ReturnType<typeof say>['named']] ?? key}</kbd>}</For></dt><dd>{does}</dd></div>}
                </For>
              </dl>
            </section>
          )}
        </For>
      </div>
    </dialog>
  );
}
