import type { Thrown } from '../core/session/ledger.ts';
import { countOf } from '../core/session/thrown.ts';

/** Throws of closed sessions that stay at hand, over all mounds: what was looked at a moment ago is looked at again. House rule. */
const THROWS_AT_HAND = 20_000;

/** The throws that were put away or brought back last, by pack. What was worked out of them holds as long as they stay. */
export class Brought {
  readonly #most: number;
  readonly #packs = new Map<number, Thrown>();
  #throws = 0;

  constructor(most = THROWS_AT_HAND) {
    this.#most = most;
  }

  get(pack: number): Thrown | undefined {
    const found = this.#packs.get(pack);
    if (found !== undefined) this.#asNewest(pack, found);
    return found;
  }

  /** The newest stay however many they are. */
  add(pack: number, thrown: Thrown): void {
    this.#throws += this.#packs.has(pack) ? 0 : countOf(thrown);
    this.#asNewest(pack, thrown);
    for (const [oldest, throws] of this.#packs) {
      if (this.#throws <= this.#most || oldest === pack) return;
      this.#packs.delete(oldest);
      this.#throws -= countOf(throws);
    }
  }

  clear(): void {
    this.#packs.clear();
    this.#throws = 0;
  }

  #asNewest(pack: number, thrown: Thrown): void {
    this.#packs.delete(pack);
    this.#packs.set(pack, thrown);
  }
}
