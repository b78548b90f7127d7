import type { Fact } from '../facts/fact.ts';
import type { Ledger } from './ledger.ts';
import type { SessionSlice } from './recorded.ts';
import { countOf } from './thrown.ts';

/** What a recording has gained behind a place of its log, and how much its carry holds now. */
export interface SessionGrowth {
  readonly held: number;
  readonly facts: readonly Fact[];
}

export function growthSince({ carry, facts }: SessionSlice, place: number): SessionGrowth {
  return { held: held(carry), facts: facts.filter((fact) => fact.place > place) };
}

/** A carry only ever gains throws and sessions: one that holds as many as before is the same. */
export function held({ throws, unclaimed, order }: Ledger): number {
  return [...Object.values(throws), unclaimed].reduce((sum, thrown) => sum + countOf(thrown), order.length);
}
