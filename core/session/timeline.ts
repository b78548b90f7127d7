/** Quiet longer than this can be folded: it says nothing but that nobody threw. House rule. */
export const QUIET_AFTER_MS = 10_000;
/** What a folded quiet counts as. House rule. */
export const FOLDED_QUIET_MS = 2_000;

/**
 * When each fact comes in playback, in milliseconds from the first: the real spacing, or with quiet folded. The order is
 * the place in the log; where the server's clock was set back between two facts they follow each other at once.
 * @param arrivedMs when each fact arrived, milliseconds since 1970, in the order of the log
 */
export function timelineOf(arrivedMs: readonly number[], foldQuiet: boolean): number[] {
  let reachedMs = 0;
  return arrivedMs.map((atMs, index) => {
    const gapMs = index === 0 ? 0 : Math.max(0, atMs - arrivedMs[index - 1]!);
    reachedMs += foldQuiet && gapMs > QUIET_AFTER_MS ? FOLDED_QUIET_MS : gapMs;
    return reachedMs;
  });
}

/**
 * The recorded moment at a point of the timeline, milliseconds since 1970: between two facts it runs from the one's time
 * to the other's, faster where quiet is folded. Null for a recording without facts.
 * @param applied how many facts have come
 */
export function momentMs(arrivedMs: readonly number[], timelineMs: readonly number[], applied: number, reachedMs: number): number | null {
  const from = arrivedMs[Math.max(0, applied - 1)];
  const to = arrivedMs[applied];
  if (from === undefined) return null;
  if (applied === 0 || to === undefined || to <= from) return from;
  const startMs = timelineMs[applied - 1]!;
  const lastsMs = timelineMs[applied]! - startMs;
  const share = lastsMs === 0 ? 0 : Math.min(1, Math.max(0, (reachedMs - startMs) / lastsMs));
  return from + share * (to - from);
}
