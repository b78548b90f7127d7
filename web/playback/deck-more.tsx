import { createMemo, For, Show, type JSX } from 'solid-js';
import { FOLDED_QUIET_MS, QUIET_AFTER_MS } from '../../core/session/timeline.ts';
import { PANELS } from '../settings.ts';
import { ASKED, type Asked } from '../wall/asked/asked.ts';
import type { Requests } from '../wall/asked/requests.ts';
import { lengthText } from '../words/moments.ts';
import { useWords } from '../words/use-words.tsx';
import type { PanelRequest } from './panel-request.ts';
import type { RecordingModel } from './recording-model.ts';

/** What is set less often: what is shown, which part is played over and over, and whether quiet is folded. */
export function DeckMore(props: { readonly model: RecordingModel; readonly requests: Requests; readonly panel: PanelRequest | null; readonly children: JSX.Element }) {
  return (
    <section class="deck-more">
      <Shown requests={props.requests} panel={props.panel} />
      <PartButtons model={props.model} />
      <Quiet model={props.model} />
      {props.children}
    </section>
  );
}

const PICTURE_WORD = { 'seam-map': 'seamMap', 'gap-line': 'gapLine', plate: 'plate' } as const satisfies Record<Asked, string>;

/** The pictures and panels, each put away by asking again. */
export function Shown(props: { readonly requests: Requests; readonly panel: PanelRequest | null }) {
  const words = useWords();
  return (
    <div class="deck-group" role="group" aria-label={words().playback.show}>
      <button type="button" aria-pressed={props.requests.windows.asked()} onClick={() => props.requests.windows.toggle()}>{words().playback.windows}</button>
      <For each={ASKED}>{(asked) => <button type="button" aria-pressed={props.requests.picture() === asked} onClick={() => props.requests.ask(asked)}>{words().playback[PICTURE_WORD[asked]]}</button>}</For>
      <Show when={props.panel}>{(panel) => <For each={PANELS}>{(one) => <button type="button" aria-pressed={panel().asked() === one} onClick={() => panel().ask(one)}>{words().playback.panels[one]}</button>}</For>}</Show>
    </div>
  );
}

function PartButtons(props: { readonly model: RecordingModel }) {
  const words = useWords();
  const part = () => props.model.state().playhead.part;
  const timeAt = (applied: number) => lengthText((props.model.state().recording.timelineMs[applied - 1] ?? 0) / 1000);
  return (
    <div class="deck-group part-buttons" role="group" aria-label={words().playback.part}>
      <span>{part() === null ? words().playback.part : words().playback.partIs(timeAt(part()!.from), timeAt(part()!.to))}</span>
      <button type="button" onClick={() => props.model.move({ kind: 'part-from-here' })}>{words().playback.fromHere}</button>
      <button type="button" onClick={() => props.model.move({ kind: 'part-to-here' })}>{words().playback.toHere}</button>
      <Show when={part() !== null}><button type="button" onClick={() => props.model.move({ kind: 'whole' })}>{words().playback.whole}</button></Show>
    </div>
  );
}

function Quiet(props: { readonly model: RecordingModel }) {
  const words = useWords();
  const state = () => props.model.state();
  const wholeS = createMemo(() => {
    const { arrivedMs } = state().recording;
    return ((arrivedMs.at(-1) ?? 0) - (arrivedMs[0] ?? 0)) / 1000;
  });
  const playsS = () => (state().recording.timelineMs.at(-1) ?? 0) / 1000;
  const said = () => (state().foldQuiet ? words().playback.folded(String(QUIET_AFTER_MS / 1000), String(FOLDED_QUIET_MS / 1000), lengthText(wholeS()), lengthText(playsS())) : words().playback.realSpacing(lengthText(wholeS())));
  return (
    <label class="quiet-time">
      <input type="checkbox" checked={state().foldQuiet} onChange={(event) => props.model.foldQuiet(event.currentTarget.checked)} />
      <span>{words().playback.foldQuiet}<small>{said()}</small></span>
    </label>
  );
}
