import { Subject, type Observable } from 'rxjs';
import type { Fact } from '../core/facts/fact.ts';
import { foldFact } from '../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../core/session/ledger.ts';
import type { SessionSlice } from '../core/session/recorded.ts';
import type { FactLog } from './log/fact-log.ts';
import { MoundPast } from './mound-past.ts';

/** The present state of every mound, kept by following the log. */
export interface Ledgers {
  /** Of a mound without facts: an empty one. */
  of(mound: string): Ledger;
  all(): Ledger[];
  /** The recording of a session; null for one that nobody has opened. */
  recorded(session: string): { readonly mound: string; readonly slice: SessionSlice } | null;
  /** The ledger of a mound after each fact from now on. */
  states(mound: string): Observable<Ledger>;
  /** Calls after every ledger was folded anew, because somebody was erased: what was made of them before no longer stands. */
  onRefolded(listener: () => void): void;
  close(): void;
}

/** Folds the whole log, then follows it. A fact that cannot be folded is reported and passed over: the log still has it. */
export function followLedgers(log: FactLog, onTrouble: (error: unknown) => void): Ledgers {
  const ledgers = new Map<string, Ledger>();
  const pasts = new Map<string, MoundPast>();
  const streams = new Map<string, Subject<Ledger>>();
  const refolded: (() => void)[] = [];

  const of = (mound: string): Ledger => ledgers.get(mound) ?? emptyLedger(mound);

  function fold(fact: Fact): void {
    const before = of(fact.mound);
    const after = folded(before, fact);
    ledgers.set(fact.mound, after);
    const past = pasts.get(fact.mound) ?? new MoundPast();
    pasts.set(fact.mound, past);
    past.take(fact, before, after);
  }

  function take(fact: Fact): void {
    fold(fact);
    streams.get(fact.mound)?.next(of(fact.mound));
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

  function foldAll(): void {
    ledgers.clear();
    pasts.clear();
    for (const mound of log.mounds()) for (const fact of log.read(mound, 0)) fold(fact);
  }

  foldAll();
  const stops = [log.onAppended(follow), log.onErased(() => {
    foldAll();
    for (const listener of refolded) listener();
  })];

  return {
    of,
    all: () => [...ledgers.values()],
    recorded(session) {
      const ledger = [...ledgers.values()].find(({ sessions }) => sessions[session] !== undefined);
      if (ledger === undefined) return null;
      const { mound, sessions } = ledger;
      return { mound, slice: pasts.get(mound)!.slice(session, sessions[session]!.openedPlace) };
    },
    states(mound) {
      const stream = streams.get(mound) ?? new Subject<Ledger>();
      streams.set(mound, stream);
      return stream;
    },
    onRefolded: (listener) => void refolded.push(listener),
    close() {
      for (const stop of stops) stop();
      for (const stream of streams.values()) stream.complete();
    },
  };
}
