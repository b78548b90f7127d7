import { createMemo, For, Show } from 'solid-js';
import type { PlayheadMove } from '../../core/session/playhead.ts';
import { FOLDED_QUIET_MS, QUIET_AFTER_MS } from '../../core/session/timeline.ts';
import type { PlaybackState } from '../live/playback.ts';
import { dateText, lengthText, timeText } from '../words/moments.ts';
import { useSpeech, useWords } from '../words/use-words.tsx';
import type { AskedFor } from '../asked-for.ts';
import type { Requests } from '../wall/asked/requests.ts';
import { playOrPause, RATES } from './keys.ts';
import { Scrubber } from './scrubber.tsx';
import { throwWords } from './where.ts';

export interface DeckProps {
  readonly state: PlaybackState;
  /** The recorded moment, milliseconds since 1970. */
  readonly moment: number;
  readonly timeZone: string;
  readonly requests: Requests;
  readonly numbers: AskedFor;
  readonly move: (move: PlayheadMove) => void;
  readonly foldQuiet: (on: boolean) => void;
}

/** Everything that moves a recording: buttons, rate, scrubber, and the same by keys. */
export function Deck(props: DeckProps) {
  const speech = useSpeech();
  const words = () => speech().words.playback;
  const mode = () => props.state.playhead.mode;
  const atEnd = () => props.state.playhead.applied >= props.state.checkpoints.facts.length;
  const playWord = () => (mode() !== 'paused' ? words().pause : atEnd() ? words().playAgain : words().play);
  return (
    <>
      <section class="deck" aria-label={words().controls}>
        <Scrubber {...props} />
        <div class="deck-buttons">
          <button type="button" class="step" aria-label={words().previous} onClick={() => props.move({ kind: 'step-throw', by: -1 })}>‹</button>
          <button type="button" class="play" onClick={() => props.move(playOrPause(props.state.playhead))}>{playWord()}</button>
          <button type="button" class="step" aria-label={words().next} onClick={() => props.move({ kind: 'step-throw', by: 1 })}>›</button>
          <label class="rate"><span class="unseen">{words().rate}</span>
            <select onChange={(event) => props.move({ kind: 'rate', rate: Number(event.currentTarget.value) })}>
              <For each={RATES}>{(rate) => <option value={rate} selected={rate === props.state.playhead.rate}>{words().times(String(rate))}</option>}</For>
            </select>
          </label>
          <Show when={props.state.recording.open && mode() !== 'following'}>
            <button type="button" class="to-live" onClick={() => props.move({ kind: 'follow' })}>{words().live}</button>
          </Show>
        </div>
        <p class="where"><strong>{throwWords(props.state, speech())}</strong>{' '}
          <time datetime={new Date(props.moment).toISOString()}>{dateText(props.moment, props.timeZone, speech().language)}, {timeText(props.moment, props.timeZone, speech().language)}</time>
        </p>
      </section>
      <section class="deck-more">
        <Quiet {...props} />
        <button type="button" aria-pressed={props.requests.windows.asked()} onClick={() => props.requests.windows.toggle()}>{words().windows}</button>
        <button type="button" aria-pressed={props.requests.picture() === 'seam-map'} onClick={() => props.requests.ask('seam-map')}>{words().seamMap}</button>
        <button type="button" aria-pressed={props.requests.picture() === 'gap-line'} onClick={() => props.requests.ask('gap-line')}>{words().gapLine}</button>
        <button type="button" aria-pressed={props.requests.picture() === 'plate'} onClick={() => props.requests.ask('plate')}>{words().plate}</button>
        <button type="button" aria-pressed={props.numbers.asked()} onClick={() => props.numbers.toggle()}>{words().numbers}</button>
        <Keys />
      </section>
    </>
  );
}

function Quiet(props: DeckProps) {
  const words = useWords();
  const wholeS = createMemo(() => {
    const { facts } = props.state.checkpoints;
    return ((facts.at(-1)?.atMs ?? 0) - (facts[0]?.atMs ?? 0)) / 1000;
  });
  const playsS = () => (props.state.recording.timelineMs.at(-1) ?? 0) / 1000;
  const said = () => (props.state.foldQuiet ? words().playback.folded(String(QUIET_AFTER_MS / 1000), String(FOLDED_QUIET_MS / 1000), lengthText(wholeS()), lengthText(playsS())) : words().playback.realSpacing(lengthText(wholeS())));
  return (
    <label class="quiet-time">
      <input type="checkbox" checked={props.state.foldQuiet} onChange={(event) => props.foldQuiet(event.currentTarget.checked)} />
      <span>{words().playback.foldQuiet}<small>{said()}</small></span>
    </label>
  );
}

function Keys() {
  const words = useWords();
  const rows = () => {
    const { keyNames: key, keyDoes } = words().playback;
    return [
      { keys: [key.space], does: keyDoes.play },
      { keys: [key.left, key.right], does: keyDoes.step },
      { keys: [key.up, key.down], does: keyDoes.rate },
      { keys: [key.home, key.end], does: keyDoes.ends },
      { keys: [key.windows], does: keyDoes.windows },
      { keys: [key.seamMap], does: keyDoes.seamMap },
      { keys: [key.gapLine], does: keyDoes.gapLine },
      { keys: [key.plate], does: keyDoes.plate },
      { keys: [key.numbers], does: keyDoes.numbers },
      { keys: [key.live], does: keyDoes.live },
    ];
  };
  return (
    <details class="keys">
      <summary>{words().playback.keys}</summary>
      <dl><For each={rows()}>{({ keys, does }) => <div><dt><For each={keys}>{(key) => <kbd>{key}</kbd>}</For></dt><dd>{does}</dd></div>}</For></dl>
    </details>
  );
}
