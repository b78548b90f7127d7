import { createSignal, Show } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import { TextField } from '../../desk/text-field.tsx';
import type { PanelProps } from './panel.ts';

/** Writes a note on one throw. */
export function NotePanel(props: PanelProps) {
  const words = useWords();
  const say = () => words().bench.throws;
  const [text, setText] = createSignal('');
  const write = () => void props.onSay({ kind: 'note-written', session: props.session.id, text: text().trim(), place: props.selection.places()[0]! });
  return (
    <div class="panel">
      <Show when={props.selection.chosen().length === 1} fallback={<p class="quiet">{say().noteOne}</p>}>
        <form class="row" onSubmit={(event) => { event.preventDefault(); write(); }}>
          <TextField label={say().noteOn} text={text()} longest={500} onText={setText} />
          <button type="submit" disabled={text().trim() === ''}>{say().saveNote}</button>
        </form>
      </Show>
    </div>
  );
}
