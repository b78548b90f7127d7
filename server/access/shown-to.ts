import type { MoundView } from '../../core/facts/views.ts';
import type { Who } from './who.ts';

/** What of a view its viewer may see: to the Glance of one session nothing of other athletes on the mound, and not the coach's notes. */
export function shownTo({ kind }: Who): (view: MoundView) => MoundView {
  return kind === 'glance' ? onlyOwn : (view) => view;
}

function onlyOwn(view: MoundView): MoundView {
  const { session } = view;
  return {
    ...view,
    session: session === null ? null : { ...session, notes: [] },
    openSessions: view.openSessions.filter(({ id }) => id === session?.id),
    unclaimed: [],
  };
}
