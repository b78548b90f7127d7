import type { Clock } from '../../device/clock.ts';

interface Timer {
  readonly atMs: number;
  readonly due: () => void;
}

export interface ManualClock extends Clock {
  /** Moves on to the earliest timer and calls it; false when there is none. */
  next(): boolean;
  /** Moves on by so much and calls what falls due, in order. */
  advance(byMs: number): void;
}

/** Time that stands still until a test moves it. */
export function manualClock(startMs = 1_750_000_000_000): ManualClock {
  let nowMs = startMs;
  const timers = new Set<Timer>();
  const earliest = (): Timer | undefined => [...timers].sort((a, b) => a.atMs - b.atMs)[0];
  const call = (timer: Timer): void => {
    timers.delete(timer);
    nowMs = Math.max(nowMs, timer.atMs);
    timer.due();
  };
  return {
    nowMs: () => nowMs,
    after(waitMs, then) {
      const timer = { atMs: nowMs + waitMs, due: then };
      timers.add(timer);
      return () => timers.delete(timer);
    },
    next() {
      const timer = earliest();
      if (timer !== undefined) call(timer);
      return timer !== undefined;
    },
    advance(byMs) {
      const untilMs = nowMs + byMs;
      for (let timer = earliest(); timer !== undefined && timer.atMs <= untilMs; timer = earliest()) call(timer);
      nowMs = untilMs;
    },
  };
}
