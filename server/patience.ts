/** What one sender may cost without bringing anything: so much at once, and so much more each second. */
export class Patience {
  readonly #most: number;
  readonly #perSecond: number;
  readonly #nowMs: () => number;
  #left: number;
  #asOfMs: number;

  constructor(most: number, perSecond: number, nowMs: () => number) {
    this.#most = most;
    this.#perSecond = perSecond;
    this.#nowMs = nowMs;
    this.#left = most;
    this.#asOfMs = nowMs();
  }

  /** Takes a cost off. False when there was not that much left; then nothing is. */
  spend(cost: number): boolean {
    const left = this.#grown() - cost;
    this.#left = Math.max(0, left);
    return left >= 0;
  }

  /** Not even the least is left. */
  get isOut(): boolean {
    return this.#grown() < 1;
  }

  get isWhole(): boolean {
    return this.#grown() === this.#most;
  }

  #grown(): number {
    const nowMs = this.#nowMs();
    // A clock that is set back takes nothing away.
    this.#left = Math.min(this.#most, this.#left + (Math.max(0, nowMs - this.#asOfMs) / 1000) * this.#perSecond);
    this.#asOfMs = nowMs;
    return this.#left;
  }
}
