import { createMemo, For } from 'solid-js';
import type { PlayheadMove } from '../../core/session/playhead.ts';
import type { PlaybackState } from '../live/playback.ts';
import { timeText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import { throwWords } from './where.ts';

/** The whole timeline under the hand, with every throw as a tick on it. It stays exactly where the hand leaves it. */
export function Scrubber(props: { readonly state: PlaybackState; readonly moment: number; readonly timeZone: string; readonly move: (move: PlayheadMove) => void }) {
  const speech = useSpeech();
  const lengthMs = () => props.state.recording.timelineMs.at(-1) ?? 0;
  const recording = createMemo(() => props.state.recording);
  const ticks = createMemo(() => {
    const { timelineMs, isThrow } = recording();
    return timelineMs.filter((_, index) => isThrow[index]).map((timeMs) => timeMs / Math.max(1, timelineMs.at(-1) ?? 1));
  });
  const said = () => speech().words.playback.scrubbed(throwWords(props.state, speech()), timeText(props.moment, props.timeZone, speech().language));
  return (
    <div class="scrubber">
      <div class="ticks" aria-hidden="true"><For each={ticks()}>{(share) => <i style={{ '--share': share }} />}</For></div>
      <input
        type="range" min={0} max={lengthMs()} step="any" value={props.state.playhead.reachedMs}
        aria-label={speech().words.playback.scrubber} aria-valuetext={said()}
        onInput={(event) => props.move({ kind: 'scrub', reachedMs: event.currentTarget.valueAsNumber })}
      />
    </div>
  );
}
