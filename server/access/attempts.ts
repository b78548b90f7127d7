/** After so many failures the next attempt has to wait, each time twice as long. */
interface Rule {
  readonly free: number;
  readonly longestMs: number;
}

const FROM_ONE_ADDRESS: Rule = { free: 5, longestMs: 5 * 60_000 };
/** Guesses from everywhere together. Kept short, or whoever guesses could keep the coach out. */
const FROM_ALL: Rule = { free: 30, longestMs: 10_000 };
const FIRST_WAIT_MS = 1000;
const FORGOTTEN_AFTER_MS = 15 * 60_000;
const MOST_ADDRESSES = 10_000;

interface Tries {
  failures: number;
  lastMs: number;
}

/** Slows sign-in attempts down. An attempt counts as failed until it is known to be good, so that many at once gain nothing. */
export interface Attempts {
  /** Milliseconds that an attempt from an address must still wait; 0 counts it as begun. */
  begin(address: string): number;
  succeeded(address: string): void;
}

export function slowAttempts(nowMs: () => number): Attempts {
  const byAddress = new Map<string, Tries>();
  const all: Tries = { failures: 0, lastMs: -Infinity };

  function triesOf(address: string): Tries {
    const known = byAddress.get(address) ?? { failures: 0, lastMs: -Infinity };
    byAddress.delete(address);
    byAddress.set(address, known);
    if (byAddress.size > MOST_ADDRESSES) byAddress.delete(byAddress.keys().next().value!);
    return known;
  }

  return {
    begin(address) {
      const own = triesOf(address);
      const waitMs = Math.max(waitOf(own, FROM_ONE_ADDRESS, nowMs()), waitOf(all, FROM_ALL, nowMs()));
      if (waitMs > 0) return waitMs;
      for (const tries of [own, all]) {
        tries.failures += 1;
        tries.lastMs = nowMs();
      }
      return 0;
    },
    succeeded(address) {
      byAddress.delete(address);
      all.failures -= 1;
    },
  };
}

function waitOf(tries: Tries, { free, longestMs }: Rule, nowMs: number): number {
  const { failures, lastMs } = tries;
  if (nowMs - lastMs > FORGOTTEN_AFTER_MS) tries.failures = 0;
  if (tries.failures < free) return 0;
  return Math.max(0, lastMs + Math.min(longestMs, FIRST_WAIT_MS * 2 ** (failures - free)) - nowMs);
}
