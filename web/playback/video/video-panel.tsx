import { createSignal, For, Show, type Accessor } from 'solid-js';
import type { ThrowView } from '../../../core/facts/views.ts';
import { useSpeech } from '../../words/use-words.tsx';
import type { RecordingModel } from '../recording-model.ts';
import { createFilm, stepTogether, type Film } from './film.ts';
import { FilmView } from './film-view.tsx';
import { placesWithVideo } from './stored-videos.ts';
import './video.css';

/** What the keys do with the films that are shown. */
export interface FilmKeys {
  readonly frame: (by: 1 | -1) => void;
  readonly release: () => void;
}

/** The high-speed video of the throw that is shown, stepped frame by frame; beside it that of the throw it is held against. */
export function VideoPanel(props: { readonly model: RecordingModel; readonly held: Accessor<ThrowView | null>; readonly keys: (keys: FilmKeys) => void }) {
  const { model } = props;
  const { session } = model.recorded;
  const speech = useSpeech();
  const say = () => speech().words.playback.video;
  const [places, setPlaces] = createSignal<readonly number[]>([]);
  const lookAgain = () => void placesWithVideo(session).then(setPlaces, () => setPlaces([]));
  lookAgain();
  const film = createFilm(session, () => model.thrown()?.place ?? null, lookAgain);
  const beside = () => (props.held() === null || props.held()!.place === model.thrown()?.place ? null : props.held()!.place);
  const other = createFilm(session, beside, lookAgain);
  const step = (by: 1 | -1) => stepTogether(film, beside() === null ? null : other, by);
  props.keys({ frame: step, release: () => void film.setRelease() });
  const number = (thrown: ThrowView) => speech().words.trade.throwNumber(thrown.number);
  const named = () => model.throws().filter(({ place }) => places().includes(place));
  return (
    <aside class="player-panel video-panel" aria-label={say().title}>
      <h2>{say().title}</h2>
      <Show when={model.thrown()} fallback={<p class="quiet">{say().before}</p>}>
        {(thrown) => (
          <div class="films">
            <Show when={beside() !== null && other.stored() ? props.held() : null}>{(held) => <FilmView film={other} name={say().held(number(held()))} step={(by) => other.goTo(other.frame() + by)} />}</Show>
            <Show when={film.stored()} fallback={<Chooser film={film} name={say().of(number(thrown()))} />}><FilmView film={film} name={number(thrown())} step={step} /></Show>
          </div>
        )}
      </Show>
      <Troubles film={film} />
      <Show when={beside() !== null && film.stored() && other.stored()}><p class="quiet">{say().together}</p></Show>
      <Show when={named().length > 0}>
        <p class="with-video">{say().others} <For each={named()}>{(thrown) => <button type="button" onClick={() => model.goTo(thrown.place)}>{thrown.number}</button>}</For></p>
      </Show>
      <p class="quiet">{say().where}</p>
    </aside>
  );
}

function Chooser(props: { readonly film: Film; readonly name: string }) {
  const speech = useSpeech();
  const say = () => speech().words.playback.video;
  const choose = (files: FileList | null | undefined) => {
    const file = files?.[0];
    if (file !== undefined) void props.film.choose(file);
  };
  return (
    <Show when={props.film.stored() === null}>
      <div class="video-chooser" onDragOver={(event) => event.preventDefault()} onDrop={(event) => { event.preventDefault(); choose(event.dataTransfer?.files); }}>
        <p><strong>{props.name}</strong></p>
        <p class="quiet">{say().none}</p>
        <label class="file">{say().choose}<input type="file" accept="video/*" onChange={(event) => choose(event.currentTarget.files)} /></label>
      </div>
    </Show>
  );
}

function Troubles(props: { readonly film: Film }) {
  const speech = useSpeech();
  const sentence = () => {
    const { unreadable, unplayable, notKept } = speech().words.playback.video;
    const trouble = props.film.trouble();
    return trouble === null ? null : { unreadable, unplayable, 'not-kept': notKept }[trouble];
  };
  return (
    <div aria-live="polite">
      <Show when={props.film.stored() && props.film.times() === null}><p class="quiet">{speech().words.playback.video.reading}</p></Show>
      <Show when={sentence()}>{(words) => <p class="refusal">{words()}</p>}</Show>
    </div>
  );
}
