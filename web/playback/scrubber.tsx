import { createMemo, createSignal, onCleanup, Show } from 'solid-js';
import { drawSessionStrip, throwNear } from '../charts/session-strip.ts';
import '../charts/session-strip.css';
import { Drawn, type Size } from '../wall/drawn.tsx';
import { timeText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { RecordingModel } from './recording-model.ts';
import { stripOf } from './strip-of.ts';
import { throwWords } from './where.ts';

/** Half of the knob of the range, and the size of the strip's letters, in pixels. */
const INSET_PX = 12;
const TEXT_PX = 13;

/** Every throw as a tick over the track; a tap on one goes to its throw. For a hand that points; the keyboard steps from throw to throw. */
function Strip(props: { readonly model: RecordingModel; readonly held: number | null }) {
  const { model } = props;
  const speech = useSpeech();
  const checkpoints = createMemo(() => model.state().checkpoints);
  const recording = createMemo(() => model.state().recording);
  const part = createMemo(() => model.state().playhead.part);
  const foldQuiet = createMemo(() => model.state().foldQuiet);
  const strip = createMemo(() => {
    const over = part();
    const atMs = (applied: number) => recording().timelineMs[applied - 1] ?? 0;
    return stripOf({ checkpoints: checkpoints(), recording: recording(), foldQuiet: foldQuiet() }, { part: over === null ? null : { fromMs: atMs(over.from), toMs: atMs(over.to) }, held: props.held }, speech());
  });
  let size: Size = { width: 1, height: 1 };
  const options = () => ({ ...size, textPx: TEXT_PX, insetPx: INSET_PX });
  const tap = (event: MouseEvent & { readonly currentTarget: HTMLElement }) => {
    const place = throwNear(strip(), options(), event.clientX - event.currentTarget.getBoundingClientRect().left);
    if (place !== null) model.goTo(place);
  };
  return (
    <div class="strip" title={speech().words.playback.ticks} onClick={tap}>
      <Drawn draw={(svg, now) => { size = now; drawSessionStrip(svg, strip(), options()); }} />
    </div>
  );
}

/** The whole timeline under the hand. It stays exactly where the hand leaves it. */
export function Scrubber(props: { readonly model: RecordingModel; readonly held: number | null }) {
  const { model } = props;
  const speech = useSpeech();
  // Ten thousand ticks take longer than the picture of one throw, which is what somebody came for.
  const [painted, setPainted] = createSignal(false);
  const first = requestAnimationFrame(() => setTimeout(() => setPainted(true)));
  onCleanup(() => cancelAnimationFrame(first));
  const lengthMs = () => model.state().recording.timelineMs.at(-1) ?? 0;
  const share = () => (lengthMs() === 0 ? 0 : model.state().playhead.reachedMs / lengthMs());
  const said = () => speech().words.playback.scrubbed(throwWords(model.state(), speech()), timeText(model.moment(), model.session().timeZone, speech().language));
  return (
    <div class="scrubber" data-current={model.thrown()?.place}>
      <Show when={painted()}><Strip model={model} held={props.held} /></Show>
      <i class="now" style={{ '--share': share() }} />
      <input
        type="range" min={0} max={lengthMs()} step="any" value={model.state().playhead.reachedMs}
        aria-label={speech().words.playback.scrubber} aria-valuetext={said()}
        onInput={(event) => model.move({ kind: 'scrub', reachedMs: event.currentTarget.valueAsNumber })}
      />
    </div>
  );
}
