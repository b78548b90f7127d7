import { createEffect, onCleanup, type Accessor } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';

/**
 * Asks again whenever the log has gone on beyond the place that is known, for as long as the component lives; one question at
 * a time.
 * @param ask tells whether it was answered; where it was not, the next place asks again
 */
export function followPlace(view: Accessor<MoundView | null>, knownPlace: number, ask: () => Promise<boolean>): void {
  let known = knownPlace;
  let wanted = known;
  let asking = false;
  let over = false;
  onCleanup(() => {
    over = true;
  });
  const askAgain = async (): Promise<void> => {
    asking = true;
    while (known < wanted && !over) {
      const asked = wanted;
      if (!(await ask())) break;
      known = asked;
    }
    asking = false;
  };
  createEffect(() => {
    wanted = view()?.place ?? wanted;
    if (wanted > known && !asking) void askAgain();
  });
}
