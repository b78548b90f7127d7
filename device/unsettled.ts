import type { ServerFrame } from '../core/facts/frames.ts';

type Welcome = Extract<ServerFrame, { kind: 'welcome' }>;

/** The frames that a device still has to bring home, by number. A device may forget only what was stored or finally refused. */
export class Unsettled {
  readonly #texts = new Map<number, string>();

  keep(sequence: number, text: string): void {
    this.#texts.set(sequence, text);
  }

  forget(sequence: number): void {
    this.#texts.delete(sequence);
  }

  get count(): number {
    return this.#texts.size;
  }

  textOf(sequence: number): string | undefined {
    return this.#texts.get(sequence);
  }

  /** Forgets what a welcome says is settled; what is left has to be sent again, lowest number first. */
  after({ settledThrough, gaps }: Welcome): string[] {
    const highestSeen = gaps.at(-1)?.[1] ?? settledThrough;
    const missing = (sequence: number): boolean => gaps.some(([from, to]) => sequence >= from && sequence <= to);
    for (const sequence of this.#texts.keys()) {
      if (sequence <= settledThrough || (sequence < highestSeen && !missing(sequence))) this.#texts.delete(sequence);
    }
    return this.texts();
  }

  /** Lowest number first. */
  texts(): string[] {
    return [...this.#texts.entries()].sort(([a], [b]) => a - b).map(([, text]) => text);
  }
}
