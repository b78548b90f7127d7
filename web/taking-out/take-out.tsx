import { createSignal, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { Pictures, type PicturesOf } from './pictures.tsx';
import { Tables } from './tables.tsx';

/** Takes out what a screen shows: each picture as it is drawn now, the throws of its session as a table, and their facts. */
export function TakeOut(props: PicturesOf) {
  const words = useWords();
  const [open, setOpen] = createSignal(false);
  return (
    <details class="take-out opens" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words().takingOut.title}</summary>
      <Show when={open()}><Pictures {...props} /></Show>
      <Tables of={{ kind: 'session', id: props.session }} />
    </details>
  );
}
