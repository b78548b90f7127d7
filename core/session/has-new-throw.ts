import type { MoundView } from '../facts/views.ts';

/** Whether a view shows another newest throw than the one before it, of the same session and stage. */
export function hasNewThrow(before: MoundView | null, after: MoundView): boolean {
  return before !== null && before.session?.id === after.session?.id && before.session?.stage === after.session?.stage
    && (after.throws.at(-1)?.place ?? 0) > (before.throws.at(-1)?.place ?? 0);
}
