import { createSignal, For, Match, Show, Switch } from 'solid-js';
import type { CoachSays } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import { ExcludePanel } from './exclude-panel.tsx';
import { MovePanel } from './move-panel.tsx';
import { NotePanel } from './note-panel.tsx';
import type { Selection } from './selection.ts';
import { TagPanel } from './tag-panel.tsx';

const PANELS = ['tag', 'exclude', 'move', 'note'] as const;
type Panel = (typeof PANELS)[number];

/** What can be said about the chosen throws. Once said and stored, the choice is let go. */
export function SelectionBar(props: { readonly session: SessionView; readonly selection: Selection }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.throws;
  const [open, setOpen] = createSignal<Panel>('tag');
  const anyExcluded = () => props.selection.chosen().some(({ excluded }) => excluded !== null);
  const tell = async (says: CoachSays) => {
    if ((await desk.say('throws', says)) === null) return;
    // The bar goes away with what had the focus: the keyboard goes on from the head of the list.
    document.querySelector<HTMLElement>('#throws-title')?.focus();
    props.selection.clear();
  };
  return (
    <div class="selection-bar" role="group" aria-label={say().selected(props.selection.chosen().length)}>
      <div class="row">
        <b aria-live="polite">{say().selected(props.selection.chosen().length)}</b>
        <button type="button" class="plain" onClick={() => props.selection.allSince()}>{say().allSince}</button>
        <button type="button" class="plain" onClick={() => props.selection.clear()}>{say().clear}</button>
      </div>
      <div class="row">
        <For each={PANELS}>{(panel) => <button type="button" class="tab" aria-expanded={open() === panel} onClick={() => setOpen(panel)}>{say()[panel]}</button>}</For>
        <Show when={anyExcluded()}>
          <button type="button" class="tab" onClick={() => void tell({ kind: 'throws-restored', session: props.session.id, places: props.selection.places() })}>{say().restore}</button>
        </Show>
      </div>
      <Switch>
        <Match when={open() === 'tag'}><TagPanel session={props.session} selection={props.selection} onSay={tell} /></Match>
        <Match when={open() === 'exclude'}><ExcludePanel session={props.session} selection={props.selection} onSay={tell} /></Match>
        <Match when={open() === 'move'}><MovePanel session={props.session} selection={props.selection} onSay={tell} /></Match>
        <Match when={open() === 'note'}><NotePanel session={props.session} selection={props.selection} onSay={tell} /></Match>
      </Switch>
    </div>
  );
}
