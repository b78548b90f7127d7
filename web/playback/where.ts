import type { PlaybackState } from '../live/playback.ts';
import type { Speech } from '../words/speech.ts';

/** "Throw 7 of 31": the newest throw shown, of all that the session holds in the end. */
export function throwWords({ view, checkpoints }: PlaybackState, { words: { playback } }: Speech): string {
  const count = checkpoints.entersAt.size;
  if (count === 0) return playback.noThrows;
  const thrown = view.session?.counts.all ?? 0;
  return thrown === 0 ? playback.beforeFirst(count) : playback.throwOf(thrown, Math.max(count, thrown));
}
