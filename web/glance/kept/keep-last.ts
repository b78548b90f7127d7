import { createEffect, onCleanup } from 'solid-js';
import type { Refusal } from '../../../core/facts/wire.ts';
import { nowMs } from '../../live/clock.ts';
import type { LiveMound } from '../../live/use-mound.ts';
import { isRightEnded } from '../../standing/standing.ts';
import type { KeptView } from './kept-view.ts';

/** Keeps what is shown for as long as it may be kept: a session that may be seen no longer, or is closed, leaves nothing on the phone. */
export function keepLast({ view, link }: Pick<LiveMound, 'view' | 'link'>, kept: KeptView): void {
  const isOver = (): boolean => isEnded(link().refused) || (view() !== null && view()?.session?.closedAtMs !== null);
  const keep = (): void => {
    const shown = view();
    if (isOver()) kept.forget();
    else if (shown !== null && link().server !== 'connecting') kept.keep(shown, link().sinceMs ?? nowMs());
  };
  createEffect(keep);
  // The hour at which the server was last heard, once the page is left.
  addEventListener('pagehide', keep);
  onCleanup(() => removeEventListener('pagehide', keep));
}

function isEnded(refused: Refusal | null): boolean {
  return refused !== null && isRightEnded(refused);
}
