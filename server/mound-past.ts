import type { Fact } from '../core/facts/fact.ts';
import { foldFact } from '../core/session/fold.ts';
import type { Ledger } from '../core/session/ledger.ts';
import { sliceFrom, touchedBy, type SessionSlice } from '../core/session/recorded.ts';

/** Facts between two kept states: cutting a recording out folds at most this many again. */
const EVERY = 1024;

/** The facts of one mound so far, with what it takes to cut a recording out of them without folding all of them again. */
export class MoundPast {
  readonly #facts: Fact[] = [];
  /** Before every so many facts; they share all that did not change between them. */
  readonly #kept: Ledger[] = [];
  /** The newest fact that has to do with each session. */
  readonly #last = new Map<string, number>();

  /** The next fact, and the mound's states around it. */
  take(fact: Fact, before: Ledger, after: Ledger): void {
    if (this.#facts.length % EVERY === 0) this.#kept.push(before);
    this.#facts.push(fact);
    for (const session of touchedBy(fact, before, after)) this.#last.set(session, fact.place);
  }

  /** The recording of a session that the fact at a place opened. */
  slice(session: string, openedPlace: number): SessionSlice {
    const before = openedPlace - 1;
    const from = Math.floor(before / EVERY);
    const atOpening = this.#facts.slice(from * EVERY, before).reduce(foldFact, this.#kept[from]!);
    return sliceFrom(atOpening, this.#facts.slice(before, this.#last.get(session)));
  }
}
