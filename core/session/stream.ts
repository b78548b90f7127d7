import { identity, map, startWith, type MonoTypeOperatorFunction, type Observable } from 'rxjs';
import type { MoundView } from '../facts/views.ts';
import type { Ledger } from './ledger.ts';

export interface Folded {
  readonly ledger: Ledger;
  readonly view: MoundView;
}

/**
 * The views of a mound whose facts are folded by `fold.ts`: that of how it stands, then one of each state that follows.
 * @param viewOf makes the view of a state, such as `moundView`
 * @param spaced may leave states out where there is no time for a view of each
 */
export function viewsOf(states$: Observable<Ledger>, start: Ledger, viewOf: (ledger: Ledger) => MoundView, spaced: MonoTypeOperatorFunction<Ledger> = identity): Observable<Folded> {
  return states$.pipe(
    spaced,
    startWith(start),
    map((ledger) => ({ ledger, view: viewOf(ledger) })),
  );
}
