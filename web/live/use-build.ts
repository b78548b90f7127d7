import { createEffect, type Accessor } from 'solid-js';

/** Loads the page again when the server serves another build than the one that this screen was loaded from. For screens without a keyboard. */
export function reloadOnNewBuild(build: Accessor<string | null>): void {
  let mine: string | null = null;
  createEffect(() => {
    const served = build();
    if (served === null) return;
    mine ??= served;
    if (served !== mine) location.reload();
  });
}
