import type { PlayheadMove } from '../../../core/session/playhead.ts';
import type { RecordingModel } from '../recording-model.ts';

/** Moves that mean the same in any session; a place on the timeline or in the log does not. */
const SHARED: ReadonlySet<PlayheadMove['kind']> = new Set(['play', 'pause', 'rate', 'step-throw']);

/** The same recording whose moves take the other along while both go together. */
export function inStep(model: RecordingModel, other: RecordingModel, together: () => boolean): RecordingModel {
  return {
    ...model,
    move: (move) => {
      model.move(move);
      if (together() && SHARED.has(move.kind)) other.move(move);
    },
  };
}
