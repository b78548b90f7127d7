import { Patience } from '../patience.ts';

/** How a sender stands after one more frame that brought nothing. */
export type Standing = 'goes-on' | 'slowed' | 'kept-off';

/** Frames for nothing that come at once from a device whose settings are wrong, after a long evening without the server. */
const AT_ONCE = 1000;
/** A device needs half a heartbeat a second. */
const A_SECOND = 5;
/** A refused frame is kept on disk, so a large one costs more. */
const BYTES_FOR_ONE = 4096;
export const SLOWED_MS = 1000;
const MOST_TIMES_SLOWED = 10;
const KEPT_OFF_MS = 60_000;
/** Senders of whom something is remembered, before those that have been calm are forgotten. */
const MOST_REMEMBERED = 1000;

interface Sender {
  readonly patience: Patience;
  timesSlowed: number;
  slowedUntilMs: number;
  keptOffUntilMs: number;
}

/**
 * Counts frames that bring nothing: refused ones and heartbeats. What is stored costs nothing here, however fast it comes, because
 * a device that sends an evening again after an outage does what it should. Remembered beyond a connection: another one is no new start.
 */
export class Floods {
  readonly #nowMs: () => number;
  readonly #senders = new Map<string, Sender>();

  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  /** `mayKeepOff` is false for senders whom nobody knows: their address may be that of others. */
  forNothing(sender: string, bytes: number, mayKeepOff: boolean): Standing {
    const nowMs = this.#nowMs();
    const one = this.#of(sender);
    if (one.patience.isWhole) one.timesSlowed = 0;
    if (one.patience.spend(1 + Math.floor(bytes / BYTES_FOR_ONE))) return nowMs < one.slowedUntilMs ? 'slowed' : 'goes-on';
    if (nowMs < one.slowedUntilMs) return 'slowed';
    one.timesSlowed += 1;
    if (mayKeepOff && one.timesSlowed > MOST_TIMES_SLOWED) {
      one.keptOffUntilMs = nowMs + KEPT_OFF_MS;
      one.timesSlowed = 0;
      return 'kept-off';
    }
    one.slowedUntilMs = nowMs + SLOWED_MS;
    return 'slowed';
  }

  isKeptOff(sender: string): boolean {
    return this.#nowMs() < (this.#senders.get(sender)?.keptOffUntilMs ?? -Infinity);
  }

  #of(sender: string): Sender {
    const known = this.#senders.get(sender);
    if (known !== undefined) return known;
    if (this.#senders.size >= MOST_REMEMBERED) for (const [name, { patience }] of this.#senders) if (patience.isWhole) this.#senders.delete(name);
    const fresh: Sender = { patience: new Patience(AT_ONCE, A_SECOND, this.#nowMs), timesSlowed: 0, slowedUntilMs: -Infinity, keptOffUntilMs: -Infinity };
    this.#senders.set(sender, fresh);
    return fresh;
  }
}
