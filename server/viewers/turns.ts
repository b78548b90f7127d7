import { Observable, type MonoTypeOperatorFunction } from 'rxjs';

/** Turns that throws on their way to the disk may take before one piece of work is done all the same. */
const MOST_GIVEN_UP = 3;

/**
 * Work that takes turns: one piece of it between two looks at what devices and people have sent, the longest wished for first.
 * So throws that come in crowds are written at once, and are shown together as often as there is time.
 */
export class Turns {
  readonly #wishes = new Set<() => void>();
  #givenUp = 0;
  readonly #isBusy: () => boolean;

  /** @param isBusy whether something more urgent waits */
  constructor(isBusy: () => boolean) {
    this.#isBusy = isBusy;
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
    if (this.#isBusy() && this.#givenUp < MOST_GIVEN_UP) {
      this.#givenUp += 1;
      setImmediate(() => this.#turn());
      return;
    }
    this.#givenUp = 0;
    this.#wishes.delete(work);
    if (this.#wishes.size > 0) setImmediate(() => this.#turn());
    work();
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
