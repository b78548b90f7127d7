import type { Clock } from './clock.ts';

/**
 * Calls once when nothing has been heard for so long, counted from now or from what was heard last. To hear costs a look at the
 * clock and no more, because every throw is heard. A clock that is set back or forward makes it wait up to twice as long, never shorter.
 */
export class Silence {
  readonly #clock: Clock;
  readonly #forMs: number;
  readonly #then: () => void;
  /** Null when nothing was heard since the wait began. */
  #heardMs: number | null = null;
  #callOff: () => void;

  constructor(clock: Clock, forMs: number, then: () => void) {
    this.#clock = clock;
    this.#forMs = forMs;
    this.#then = then;
    this.#callOff = this.#wait(forMs);
  }

  heard(nowMs = this.#clock.nowMs()): void {
    this.#heardMs = nowMs;
  }

  end(): void {
    this.#callOff();
  }

  #wait(waitMs: number): () => void {
    return this.#clock.after(waitMs, () => {
      const heardMs = this.#heardMs;
      if (heardMs === null) return this.#then();
      const quietMs = this.#clock.nowMs() - heardMs;
      const canBe = quietMs >= 0 && quietMs <= waitMs;
      this.#heardMs = null;
      this.#callOff = this.#wait(canBe ? this.#forMs - quietMs : this.#forMs);
    });
  }
}
