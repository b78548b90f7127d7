import { createSignal, Show } from 'solid-js';
import type { SessionView } from '../../../../core/facts/views.ts';
import { Answer } from '../../../desk/answer.tsx';
import { useDesk } from '../../../desk/desk.ts';
import { TextField } from '../../../desk/text-field.tsx';
import { useWords } from '../../../words/use-words.tsx';
import { Choice } from '../../fields/choice.tsx';
import type { OpenSheet } from '../open-sheet.ts';
import { HeldThrow } from './held-throw.tsx';

/** A note on the last throw, or on the session. */
export function NoteSheet(props: { readonly session: SessionView; readonly open: OpenSheet }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.dock;
  const [about, setAbout] = createSignal<'throw' | 'session'>('throw');
  const thrown = () => (about() === 'session' ? null : props.open.held());
  const nameOf = (one: 'throw' | 'session') => (one === 'session' ? say().noteSession : words().trade.throwNumber(props.open.held()!.number));
  const text = () => props.open.note().trim();
  const write = async () => {
    if (text() === '') return;
    const place = await desk.say('notes', { kind: 'note-written', session: props.session.id, text: text(), place: thrown()?.place ?? null });
    if (place === null) return;
    props.open.setNote('');
    props.open.close();
  };
  return (
    <form class="note-sheet" onSubmit={(event) => { event.preventDefault(); void write(); }}>
      <Show when={props.open.held()}>{(held) => <>
        <Choice legend={say().noteAbout} options={['throw', 'session'] as const} say={nameOf} chosen={about()} onChoose={setAbout} />
        <Show when={about() === 'throw'}><HeldThrow thrown={held()} open={props.open} /></Show>
      </>}</Show>
      <Answer corner="notes" />
      <div class="row">
        <TextField label={thrown() === null ? words().bench.session.writeNote : words().bench.throws.noteOn} text={props.open.note()} longest={500} onText={props.open.setNote} />
        <button type="submit" disabled={text() === ''}>{words().bench.session.saveNote}</button>
      </div>
    </form>
  );
}
