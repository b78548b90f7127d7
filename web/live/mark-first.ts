import type { MoundView } from '../../core/facts/views.ts';
import { hasNewThrow } from '../../core/session/has-new-throw.ts';
import { UNLINKED, type LinkState } from './link.ts';

/**
 * Tells of a throw in two steps: its view at once to whoever draws its mark, and in the next frame what a link tells, so that the
 * mark is painted before the browser has laid out all that is said of it. What is not a throw is told at once.
 * @param comes told the view of a throw ahead of `tell`
 */
export function markFirst(tell: (state: LinkState) => void, comes: (view: MoundView) => void): (state: LinkState) => void {
  let newest = UNLINKED;
  let waits = false;
  const pass = (): void => {
    waits = false;
    tell(newest);
  };
  return (state) => {
    const { view } = state;
    const before = newest.view;
    newest = state;
    const isThrow = view !== null && hasNewThrow(before, view);
    // A page that nobody sees is given no frames. What says nothing of the throws waits with them.
    if (document.hidden || !(isThrow || (waits && view === before))) return pass();
    if (isThrow) comes(view);
    if (waits) return;
    waits = true;
    // The first of the two frames paints the mark.
    requestAnimationFrame(() => requestAnimationFrame(() => {
      if (waits) pass();
    }));
  };
}
