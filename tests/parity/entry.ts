import type { MoundView } from '../../core/facts/views.ts';
import { checkpointsOf, ledgerAt } from '../../core/session/checkpoints.ts';
import type { SessionSlice } from '../../core/session/recorded.ts';
import { moundView } from '../../core/session/view.ts';

/** What Playback folds, alone: the view after each fact of a recorded session, as it is shown when the playhead goes there. */
export function playedViews(slice: SessionSlice, session: string): MoundView[] {
  const checkpoints = checkpointsOf(slice, session);
  return slice.facts.map((_, index) => moundView(ledgerAt(checkpoints, index + 1), session));
}
