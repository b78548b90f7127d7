import { Observable, type MonoTypeOperatorFunction } from 'rxjs';
import type { FactLog } from '../log/fact-log.ts';
import { systemStopwatch, type Stopwatch } from '../clock.ts';

/** In a crowd this work takes one part in so many of the time. */
const ONE_PART_IN = 8;

/**
 * Work that takes turns: one piece of it between two looks at what devices and people have sent, the longest wished for first.
 * Where throws come in a crowd it rests after a piece seven times as long as that took: so they are written and answered
 * first, and are shown together as often as there is time.
 */
export class Turns {
  readonly #wishes = new Set<() => void>();
  readonly #log: Pick<FactLog, 'isCrowded' | 'isQuiet'>;
  readonly #watch: Stopwatch;
  #restsUntilMs = -Infinity;

  constructor(log: Pick<FactLog, 'isCrowded' | 'isQuiet'>, watch: Stopwatch = systemStopwatch) {
    this.#log = log;
    this.#watch = watch;
  }

  /** Wished for twice before its turn, it is done once. */
  wish(work: () => void): void {
    if (this.#wishes.size === 0) {
      // Where nothing else is on its way, it goes ahead even of the answer to who brought it about.
      if (this.#log.isQuiet()) queueMicrotask(() => this.#turn());
      else setImmediate(() => this.#turn());
    }
    this.#wishes.add(work);
  }

  drop(work: () => void): void {
    this.#wishes.delete(work);
  }

  #turn(): void {
    const [work] = this.#wishes;
    if (work === undefined) return;
    const beganMs = this.#watch.nowMs();
    if (beganMs < this.#restsUntilMs) return void this.#watch.after(1, () => this.#turn());
    this.#wishes.delete(work);
    if (this.#wishes.size > 0) setImmediate(() => this.#turn());
    try {
      work();
    } finally {
      const endedMs = this.#watch.nowMs();
      if (this.#log.isCrowded()) this.#restsUntilMs = endedMs + (ONE_PART_IN - 1) * (endedMs - beganMs);
    }
  }
}

/** The newest of a stream whenever it has its turn: what came in between is left out. */
export function inTurns<Value>(turns: Turns): MonoTypeOperatorFunction<Value> {
  return (source$) => new Observable((subscriber) => {
    let newest: { readonly value: Value } | null = null;
    const pass = (): void => subscriber.next(newest!.value);
    const following = source$.subscribe({
      next(value) {
        newest = { value };
        turns.wish(pass);
      },
      error: (error: unknown) => subscriber.error(error),
      complete: () => subscriber.complete(),
    });
    return () => {
      following.unsubscribe();
      turns.drop(pass);
    };
  });
}
