/** The server's only reader of time. Everything else is given a clock, so that a test can hold it in its hand. */
export interface Clock {
  /** Milliseconds since 1970. */
  nowMs(): number;
  /** Calls once, `waitMs` from now. Returns what calls it off. */
  after(waitMs: number, then: () => void): () => void;
  /** Calls again and again, `everyMs` apart. Returns what ends it. */
  every(everyMs: number, then: () => void): () => void;
}

export const systemClock: Clock = {
  nowMs: () => Date.now(),
  after(waitMs, then) {
    const timer = setTimeout(then, waitMs);
    return () => clearTimeout(timer);
  },
  every(everyMs, then) {
    const timer = setInterval(then, everyMs);
    return () => clearInterval(timer);
  },
};

/** What work is measured by. */
export interface Stopwatch extends Pick<Clock, 'after'> {
  /** Milliseconds since some moment before; never fewer than a moment ago. */
  nowMs(): number;
}

export const systemStopwatch: Stopwatch = {
  nowMs: () => performance.now(),
  after: systemClock.after,
};
