import type { Refusal } from '../../core/facts/wire.ts';
import { Patience } from '../patience.ts';

const AT_ONCE = 1000;
/** A hand on a tablet says one thing a second in its busiest moments. */
const A_SECOND = 5;
/** A view is made and sent whole for each. */
const FOR_A_WATCH = 10;
/** Statements of one screen that may wait for their turn: everybody's are taken one after the other. */
const MOST_WAITING = 256;
const MOST_IGNORED = 1000;

const TOO_FAST: Refusal = { kind: 'refused', code: 'too-fast', path: '', sentence: 'This screen asks far more than a person can; wait some seconds, then say it again.' };

/** Holds one screen to what a person can do. What a coach says and is stored costs nothing; what is refused, and everything else, does. */
export class Pace {
  readonly #patience: Patience;
  #waiting = 0;
  #ignored = 0;

  constructor(nowMs: () => number) {
    this.#patience = new Patience(AT_ONCE, A_SECOND, nowMs);
  }

  /** Whether the screen does not stop although it was told to wait, again and again. */
  get isHopeless(): boolean {
    return this.#ignored > MOST_IGNORED;
  }

  /** Why something is not even looked at; null when it is. */
  refusal(event: string, isCoach: boolean): Refusal | null {
    const mayWait = event !== 'say' || this.#waiting < MOST_WAITING;
    const cost = event === 'watch' ? FOR_A_WATCH : event === 'say' && isCoach ? 0 : 1;
    if (mayWait && !this.#patience.isOut && this.#patience.spend(cost)) return null;
    this.#ignored += 1;
    return TOO_FAST;
  }

  /** Counts a statement until it is answered. */
  async said<Reply extends { readonly kind: string }>(reply: Promise<Reply>): Promise<Reply> {
    this.#waiting += 1;
    try {
      const answered = await reply;
      if (answered.kind === 'refused') this.#patience.spend(1);
      return answered;
    } finally {
      this.#waiting -= 1;
    }
  }
}
