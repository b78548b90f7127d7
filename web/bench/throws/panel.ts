import type { CoachSays } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import type { Selection } from './selection.ts';

/** What every panel of the selection bar is given. */
export interface PanelProps {
  readonly session: SessionView;
  readonly selection: Selection;
  readonly onSay: (says: CoachSays) => Promise<void>;
}
