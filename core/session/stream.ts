import { identity, map, scan, startWith, type MonoTypeOperatorFunction, type Observable } from 'rxjs';
import type { Fact } from '../facts/fact.ts';
import type { MoundView } from '../facts/views.ts';
import { foldFact } from './fold.ts';
import type { Ledger } from './ledger.ts';
import { moundView } from './view.ts';

export interface Folded {
  readonly ledger: Ledger;
  readonly view: MoundView;
}

/**
 * The fold of `fold.ts` lifted over a stream of facts: the view before the first fact, then one after each.
 * @param spaced may leave ledgers out where there is no time for a view of each
 */
export function viewsOf(facts$: Observable<Fact>, start: Ledger, session: string | null, spaced: MonoTypeOperatorFunction<Ledger> = identity): Observable<Folded> {
  return facts$.pipe(
    scan(foldFact, start),
    spaced,
    startWith(start),
    map((ledger) => ({ ledger, view: moundView(ledger, session) })),
  );
}
