import { Observable, type MonoTypeOperatorFunction } from 'rxjs';
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
  readonly #isCrowded: () => boolean;
  readonly #watch: Stopwatch;
  #restsUntilMs = -Infinity;

  /** @param isCrowded whether so much that is more urgent has come that this work has to rest */
  constructor(isCrowded: () => boolean, watch: Stopwatch = systemStopwatch) {
    this.#isCrowded = isCrowded;
    this.#watch = watch;
  }

  /** Wished for twice before its turn, it is done once. */
  wish(work: () => void): void {
    if (this.#wishes.size === 0) setImmediate(() => this.#turn());
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
      if (this.#isCrowded()) this.#restsUntilMs = endedMs + (ONE_PART_IN - 1) * (endedMs - beganMs);
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
