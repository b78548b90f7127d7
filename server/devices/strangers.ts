/** Connections from one address that may stand open without a hello. A hall full of devices that come back at once says it within moments. */
const MOST_FROM_ONE_ADDRESS = 256;

/** Counts connections that have not said hello, by the address they come from, so that one machine cannot take all there are. */
export class Strangers {
  readonly #count = new Map<string, number>();

  areTooMany(address: string): boolean {
    return (this.#count.get(address) ?? 0) >= MOST_FROM_ONE_ADDRESS;
  }

  /** One more has come. Returns what says that it is no stranger any more; said twice, it counts once. */
  came(address: string): () => void {
    this.#count.set(address, (this.#count.get(address) ?? 0) + 1);
    let counted = true;
    return () => {
      if (!counted) return;
      counted = false;
      const left = this.#count.get(address)! - 1;
      if (left === 0) this.#count.delete(address);
      else this.#count.set(address, left);
    };
  }
}
