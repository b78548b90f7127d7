import { createEffect, createMemo, createSignal, onCleanup, Show } from 'solid-js';
import { millisecondsText, numberText } from '../../words/numbers.ts';
import { useSpeech } from '../../words/use-words.tsx';
import type { Film } from './film.ts';
import { frameAt, playedFps } from './frames.ts';
import { seekingOf, soughtAgain, type Seeking } from './seeking.ts';

/** Rates of cameras that film faster than their files play. */
const FILMED_FPS: readonly number[] = [60, 120, 240, 480, 960, 1000];

/** One film and the frame that it stands at, with what can be done with it. */
export function FilmView(props: { readonly film: Film; readonly name: string; readonly step: (by: 1 | -1) => void }) {
  const { film } = props;
  const speech = useSpeech();
  const say = () => speech().words.playback.video;
  const times = () => film.times() ?? [];
  const position = () => {
    const realS = film.fromReleaseS();
    if (realS === null) return say().frame(film.frame() + 1, times().length);
    const from = Math.abs(realS) < 5e-5 ? say().atRelease : say().fromRelease(`${realS > 0 ? '+' : ''}${millisecondsText(realS, speech())}`);
    return `${say().frame(film.frame() + 1, times().length)}, ${from}`;
  };
  return (
    <figure class="film" aria-label={props.name}>
      <Picture film={film} />
      <figcaption><strong>{props.name}</strong> <span class="film-position">{position()}</span></figcaption>
      <input type="range" min={0} max={Math.max(0, times().length - 1)} step={1} value={film.frame()} aria-label={say().slider} aria-valuetext={position()} onInput={(event) => film.goTo(event.currentTarget.valueAsNumber)} />
      <div class="film-buttons">
        <button type="button" aria-label={say().back} onClick={() => props.step(-1)}>‹</button>
        <button type="button" aria-label={say().on} onClick={() => props.step(1)}>›</button>
        <button type="button" onClick={() => void film.setRelease()}>{say().release}</button>
        <Show when={film.fromReleaseS() !== null}><button type="button" onClick={() => film.goFromRelease(0)}>{say().toRelease}</button></Show>
      </div>
      <Show when={film.times() !== null && film.fromReleaseS() === null}><p class="quiet">{say().noRelease}</p></Show>
      <label>{say().filmed}
        <select value={String(film.stored()?.filmedFps ?? '')} onChange={(event) => void film.setFilmed(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))}>
          <option value="">{say().asPlayed(numberText(playedFps(times()), 0, speech().language))}</option>
          {FILMED_FPS.map((fps) => <option value={fps}>{say().rate(String(fps))}</option>)}
        </select>
      </label>
      <button type="button" class="plain" onClick={() => void film.remove()}>{say().remove}</button>
    </figure>
  );
}

/** The picture itself: it never plays, it is put to the middle of a frame; what is really shown is told back. */
function Picture(props: { readonly film: Film }) {
  const file = createMemo(() => props.film.stored()?.file ?? null);
  const address = createMemo(() => {
    const now = file();
    if (now === null) return undefined;
    const made = URL.createObjectURL(now);
    onCleanup(() => URL.revokeObjectURL(made));
    return made;
  });
  const [shown, setShown] = createSignal<number | null>(null);
  let video!: HTMLVideoElement;
  let seeking: Seeking | null = null;
  const seek = (next: Seeking | null) => {
    seeking = next;
    if (next !== null) video.currentTime = next.atS;
  };
  const watch = () => {
    video.requestVideoFrameCallback?.((_, { mediaTime }) => {
      setShown(frameAt(props.film.times() ?? [], mediaTime));
      watch();
    });
  };
  // Where a search ends in the frame that was shown before, no frame is told: so it is looked at once the search is over.
  const arrived = () => requestAnimationFrame(() => requestAnimationFrame(() => {
    const now = shown();
    if (seeking !== null && now !== null && !video.seeking) seek(soughtAgain(seeking, now));
  }));
  const [ready, setReady] = createSignal(false);
  createEffect(() => {
    const read = props.film.times();
    if (read !== null && read.length > 0 && ready()) seek(seekingOf(read, props.film.frame()));
  });
  return <video ref={(element) => { video = element; watch(); }} src={address()} muted playsinline preload="auto" data-shown={shown() ?? undefined} onLoadedMetadata={() => setReady(true)} onSeeked={arrived} onError={() => { if (address() !== undefined) props.film.cannotPlay(); }} />;
}
