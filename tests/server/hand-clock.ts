import type { Clock } from '../../server/clock.ts';

interface Timer {
  dueMs: number;
  readonly everyMs: number | null;
  readonly then: () => void;
}

/** A clock that stands still until a test moves it. */
export function handClock(startMs = 1_700_000_000_000): Clock & { advance(ms: number): void } {
  let nowMs = startMs;
  const timers = new Set<Timer>();
  const add = (waitMs: number, everyMs: number | null, then: () => void): (() => void) => {
    const timer = { dueMs: nowMs + waitMs, everyMs, then };
    timers.add(timer);
    return () => timers.delete(timer);
  };
  return {
    nowMs: () => nowMs,
    after: (waitMs, then) => add(waitMs, null, then),
    every: (everyMs, then) => add(everyMs, everyMs, then),
    advance(ms) {
      const endMs = nowMs + ms;
      for (;;) {
        const [next] = [...timers].filter(({ dueMs }) => dueMs <= endMs).sort((a, b) => a.dueMs - b.dueMs);
        if (next === undefined) break;
        nowMs = next.dueMs;
        if (next.everyMs === null) timers.delete(next);
        else next.dueMs += next.everyMs;
        next.then();
      }
      nowMs = endMs;
    },
  };
}
