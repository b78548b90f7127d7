import { setImmediate } from 'node:timers/promises';

/** Facts folded in one go: in between a start says how far it is, and hears that it shall stop. */
const AT_ONCE = 2048;
/** A start that is over sooner says nothing. */
const QUIET_MS = 1000;
const SAID_EVERY_MS = 2000;

/** What the log has of a mound behind the state that was kept. */
export interface Behind {
  /** Places: where the state stands, and where the log ends. */
  readonly from: number;
  readonly through: number;
  /** Folds what the log has up to a place. */
  read(through: number): void;
  /** After the last of it. */
  end(): void;
}

/** How far a start has come that reads records anew. */
export type ReadAnew =
  | { readonly kind: 'reading'; readonly facts: number; readonly of: number }
  | { readonly kind: 'read'; readonly facts: number; readonly mounds: number; readonly tookMs: number };

export interface Watched {
  readonly nowMs: () => number;
  /** Told now and then while it takes long, and at its end. */
  readonly onReading?: (so: ReadAnew) => void;
  readonly stop?: AbortSignal;
}

/**
 * Folds what the log has behind the states that were kept; without any that is all of it, and takes a minute for a million throws.
 * @throws the signal's reason where it is asked to stop; what it has folded until then holds
 */
export async function catchUp(behind: readonly Behind[], { nowMs, onReading, stop }: Watched): Promise<void> {
  const of = behind.reduce((sum, { from, through }) => sum + through - from, 0);
  if (of === 0) return;
  const startedMs = nowMs();
  let facts = 0;
  let saidNextMs = startedMs + QUIET_MS;
  for (const { from, through, read, end } of behind) {
    for (let place = from; place < through;) {
      stop?.throwIfAborted();
      const next = Math.min(place + AT_ONCE, through);
      read(next);
      facts += next - place;
      place = next;
      const now = nowMs();
      if (now >= saidNextMs) {
        onReading?.({ kind: 'reading', facts, of });
        saidNextMs = now + SAID_EVERY_MS;
      }
      // oxlint-disable-next-line no-await-in-loop -- a signal is heard in between
      await setImmediate();
    }
    end();
  }
  const tookMs = nowMs() - startedMs;
  if (tookMs >= QUIET_MS) onReading?.({ kind: 'read', facts, mounds: behind.filter(({ from, through }) => through > from).length, tookMs });
}
