import { createSignal, For, Show } from 'solid-js';
import type { NoteView, SessionView } from '../../../core/facts/views.ts';
import { hourText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { TextField } from '../../desk/text-field.tsx';

/** What was written about the session and its throws, newest first, and a line for more. */
export function Notes(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.session;
  const [text, setText] = createSignal('');
  const write = async () => {
    const words = text().trim();
    if (words === '') return;
    const place = await desk.say('notes', { kind: 'note-written', session: props.session.id, text: words, place: null });
    if (place !== null) setText('');
  };
  const about = (note: NoteView) => {
    const thrown = desk.view().throws.find(({ place }) => place === note.place);
    return thrown === undefined ? null : speech().words.trade.throwNumber(thrown.number);
  };
  return (
    <div class="notes">
      <h3>{say().notes}</h3>
      <form class="row" onSubmit={(event) => { event.preventDefault(); void write(); }}>
        <TextField label={say().writeNote} text={text()} longest={500} onText={setText} />
        <button type="submit" disabled={text().trim() === ''}>{say().saveNote}</button>
      </form>
      <Answer corner="notes" />
      <ul>
        <For each={[...props.session.notes].reverse()} fallback={<li class="quiet">{say().noNotes}</li>}>
          {(note) => (
            <li>
              <span class="quiet">{hourText(note.atMs, props.session.timeZone, speech().language)}<Show when={about(note)}>{(thrown) => <>, {thrown()}</>}</Show></span> {note.text}
            </li>
          )}
        </For>
      </ul>
    </div>
  );
}
