import { For, Show } from 'solid-js';
import { dateText, timeText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import { zoneOffset } from '../words/zone-offset.ts';
import { playOrPause, RATES } from './key-table.ts';
import { Refused } from './notes-panel.tsx';
import type { Marking } from './marking.ts';
import type { RecordingModel } from './recording-model.ts';
import { Scrubber } from './scrubber.tsx';
import { throwWords } from './where.ts';

interface DeckProps {
  readonly model: RecordingModel;
  readonly marking: Marking;
  readonly held: number | null;
  /** Of two decks each has a name of its own. */
  readonly label?: string;
}

/** What moves a recording, always under the hand: scrubber, steps, rate, bookmark, and the way back to live. */
export function Deck(props: DeckProps) {
  const { model, marking } = props;
  const speech = useSpeech();
  const words = () => speech().words.playback;
  const playhead = () => model.state().playhead;
  const atEnd = () => playhead().applied >= model.state().checkpoints.facts.length;
  const playWord = () => (playhead().mode !== 'paused' ? words().pause : atEnd() ? words().playAgain : words().play);
  const zone = () => model.session().timeZone;
  return (
    <section class="deck" aria-label={props.label ?? words().controls}>
      <Scrubber model={model} held={props.held} />
      <div class="deck-buttons">
        <button type="button" class="step" aria-label={words().previous} onClick={() => model.move({ kind: 'step-throw', by: -1 })}>‹</button>
        <button type="button" class="play" onClick={() => model.move(playOrPause(playhead()))}>{playWord()}</button>
        <button type="button" class="step" aria-label={words().next} onClick={() => model.move({ kind: 'step-throw', by: 1 })}>›</button>
        <label class="rate"><span class="unseen">{words().rate}</span>
          <select onChange={(event) => model.move({ kind: 'rate', rate: Number(event.currentTarget.value) })}>
            <For each={RATES}>{(rate) => <option value={rate} selected={rate === playhead().rate}>{words().times(String(rate))}</option>}</For>
          </select>
        </label>
        <button type="button" class="bookmark" aria-pressed={marking.bookmarked()} disabled={model.thrown() === null} onClick={() => marking.toggle()}>
          <svg viewBox="-7 -8 14 16" aria-hidden="true"><path d="M-4.5,-6H4.5V6L0,2L-4.5,6Z" /></svg><span>{marking.bookmarked() ? words().bookmarked : words().bookmark}</span>
        </button>
        <Show when={model.state().recording.open && playhead().mode !== 'following'}>
          <button type="button" class="to-live" onClick={() => model.move({ kind: 'follow' })}>{words().live}</button>
        </Show>
      </div>
      <p class="where"><strong>{throwWords(model.state(), speech())}</strong>{' '}
        <time datetime={new Date(model.moment()).toISOString()}>{`${dateText(model.moment(), zone(), speech().language)}, ${timeText(model.moment(), zone(), speech().language)} ${zoneOffset(model.moment(), zone())}`}</time>
      </p>
      <Refused marking={marking} />
    </section>
  );
}
