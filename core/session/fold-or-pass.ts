import type { Fact } from '../facts/fact.ts';
import { foldFact } from './fold.ts';
import type { Ledger } from './ledger.ts';

/** Folds a fact; one that cannot be folded is told of and passed over, because the log still has it and the facts behind it count. */
export function foldOrPass(ledger: Ledger, fact: Fact, onTrouble: (error: unknown) => void = () => {}): Ledger {
  try {
    return foldFact(ledger, fact);
  } catch (error) {
    onTrouble(error);
    return { ...ledger, place: fact.place, atMs: fact.atMs };
  }
}
