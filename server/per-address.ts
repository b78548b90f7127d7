/** Counts what stands open by the address it comes from, so that one machine cannot take all there is. */
export class PerAddress {
  readonly #count = new Map<string, number>();

  of(address: string): number {
    return this.#count.get(address) ?? 0;
  }

  /** One more has come. Returns what says that it counts no longer; said twice, it is said once. */
  came(address: string): () => void {
    this.#count.set(address, this.of(address) + 1);
    let counted = true;
    return () => {
      if (!counted) return;
      counted = false;
      const left = this.of(address) - 1;
      if (left === 0) this.#count.delete(address);
      else this.#count.set(address, left);
    };
  }
}
