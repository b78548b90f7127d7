/** Time as a device gets it, so that a test can hold it in its hand. */
export interface Clock {
  /** Milliseconds since 1970. */
  nowMs(): number;
  /** Calls once, `waitMs` from now. Returns what calls it off. */
  after(waitMs: number, then: () => void): () => void;
}

export const systemClock: Clock = {
  nowMs: () => Date.now(),
  after(waitMs, then) {
    const timer = setTimeout(then, waitMs);
    return () => clearTimeout(timer);
  },
};

/** Resolves `waitMs` from now, or at once when `stop` is or gets aborted. */
export function pause(clock: Clock, waitMs: number, stop: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (stop.aborted) return resolve();
    const callOff = clock.after(waitMs, () => {
      stop.removeEventListener('abort', atOnce);
      resolve();
    });
    const atOnce = (): void => {
      callOff();
      resolve();
    };
    stop.addEventListener('abort', atOnce, { once: true });
  });
}
