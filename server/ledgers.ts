import { Subject, type Observable } from 'rxjs';
import type { Fact } from '../core/facts/fact.ts';
import { foldFact } from '../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../core/session/ledger.ts';
import type { FactLog } from './log/fact-log.ts';

/** The present state of every mound, kept by following the log. */
export interface Ledgers {
  /** Of a mound without facts: an empty one. */
  of(mound: string): Ledger;
  all(): Ledger[];
  /** The facts of a mound so far, the very ones that its ledger was folded from: what is remembered of their throws holds. */
  history(mound: string): readonly Fact[];
  /** The facts of a mound from now on, each once its ledger holds it. */
  facts(mound: string): Observable<Fact>;
  close(): void;
}

/** Folds the whole log, then follows it. A fact that cannot be folded is reported and passed over: the log still has it. */
export function followLedgers(log: FactLog, onTrouble: (error: unknown) => void): Ledgers {
  const ledgers = new Map<string, Ledger>();
  const histories = new Map<string, Fact[]>();
  const streams = new Map<string, Subject<Fact>>();

  const of = (mound: string): Ledger => ledgers.get(mound) ?? emptyLedger(mound);

  function fold(fact: Fact): void {
    ledgers.set(fact.mound, folded(of(fact.mound), fact));
    const history = histories.get(fact.mound) ?? [];
    histories.set(fact.mound, history);
    history.push(fact);
  }

  function take(fact: Fact): void {
    fold(fact);
    streams.get(fact.mound)?.next(fact);
  }

  function folded(ledger: Ledger, fact: Fact): Ledger {
    try {
      return foldFact(ledger, fact);
    } catch (error) {
      onTrouble(error);
      return { ...ledger, place: fact.place, atMs: fact.atMs };
    }
  }

  function follow(fact: Fact): void {
    const { place } = of(fact.mound);
    if (fact.place <= place) return;
    if (fact.place === place + 1) return take(fact);
    // A commit that was reported as failed can be on disk after all.
    for (const missed of [...log.read(fact.mound, place)]) if (missed.place <= fact.place) take(missed);
  }

  for (const mound of log.mounds()) for (const fact of log.read(mound, 0)) fold(fact);
  const stop = log.onAppended(follow);

  return {
    of,
    all: () => [...ledgers.values()],
    history: (mound) => histories.get(mound) ?? [],
    facts(mound) {
      const stream = streams.get(mound) ?? new Subject<Fact>();
      streams.set(mound, stream);
      return stream;
    },
    close() {
      stop();
      for (const stream of streams.values()) stream.complete();
    },
  };
}
