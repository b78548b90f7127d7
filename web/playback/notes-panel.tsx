import { createSignal, For, Show } from 'solid-js';
import { RefusalWords } from '../standing/refusal.tsx';
import { dateText, hourText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { Marking } from './marking.ts';
import { remarksOf, type Remark } from './remarks.ts';
import type { RecordingModel } from './recording-model.ts';
import { tickWords } from './strip-of.ts';

/** What was written about the session and which throws were marked, in its order, and a line to write more about the throw that is shown. */
export function NotesPanel(props: { readonly model: RecordingModel; readonly marking: Marking; readonly line: (input: HTMLInputElement) => void }) {
  const { model } = props;
  const speech = useSpeech();
  const say = () => speech().words.playback.notes;
  const [text, setText] = createSignal('');
  const [aboutSession, setAboutSession] = createSignal(false);
  const about = () => (aboutSession() ? null : model.thrown());
  const label = () => {
    const thrown = about();
    return thrown === null ? say().onSession : say().onThrow(speech().words.trade.throwNumber(thrown.number));
  };
  const write = async () => {
    const words = text().trim();
    if (words !== '' && (await props.marking.write(words, about()?.place ?? null))) setText('');
  };
  return (
    <aside class="player-panel notes-panel" aria-label={say().title}>
      <h2>{say().title}</h2>
      <form onSubmit={(event) => { event.preventDefault(); void write(); }}>
        <label>{label()}<input ref={props.line} type="text" autocomplete="off" maxLength={500} value={text()} onInput={(event) => setText(event.currentTarget.value)} /></label>
        <button type="submit" disabled={text().trim() === ''}>{say().save}</button>
        <label class="tick"><input type="checkbox" checked={aboutSession()} onChange={(event) => setAboutSession(event.currentTarget.checked)} /> {say().aboutSession}</label>
      </form>
      <Refused marking={props.marking} />
      <ol><For each={remarksOf(model.session(), model.throws(), model.state().checkpoints)} fallback={<li class="quiet">{say().none}</li>}>{(remark) => <Line remark={remark} {...props} />}</For></ol>
    </aside>
  );
}

function Line(props: { readonly remark: Remark; readonly model: RecordingModel; readonly marking: Marking }) {
  const speech = useSpeech();
  const say = () => speech().words.playback.notes;
  const what = () => (props.remark.thrown === null ? say().session : tickWords(props.remark.thrown, speech()));
  const current = () => props.remark.thrown !== null && props.remark.thrown.place === props.model.thrown()?.place;
  const later = () => {
    const { atMs, later: isLater } = props.remark;
    const { timeZone } = props.model.session();
    return isLater && atMs !== null ? say().later(`${dateText(atMs, timeZone, speech().language)}, ${hourText(atMs, timeZone, speech().language)}`) : null;
  };
  return (
    <li data-remark={props.remark.kind}>
      <button type="button" class="remark" aria-current={current() ? 'true' : undefined} onClick={() => props.model.goTo(props.remark.goTo)}>
        <span class="remark-of">{what()}</span>
        <span class="remark-text">{props.remark.kind === 'bookmark' ? say().bookmark : props.remark.text}</span>
        <Show when={later()}>{(words) => <small>{words()}</small>}</Show>
      </button>
      <Show when={props.remark.kind === 'bookmark' && props.remark.thrown}>
        {(thrown) => <button type="button" class="take-off" aria-label={say().takeOff(speech().words.trade.throwNumber(thrown().number))} onClick={() => props.marking.takeOff(thrown().place)}>×</button>}
      </Show>
    </li>
  );
}

/** Why the last mark or note was not stored. */
export function Refused(props: { readonly marking: Marking }) {
  const speech = useSpeech();
  return <div aria-live="polite"><Show when={props.marking.refusal()}>{(refusal) => <p class="refusal"><strong>{speech().words.playback.notes.refused}</strong> <RefusalWords refusal={refusal()} /></p>}</Show></div>;
}
