import { map, scan, startWith, type Observable } from 'rxjs';
import type { Fact } from '../facts/fact.ts';
import type { MoundView } from '../facts/views.ts';
import { foldFact } from './fold.ts';
import type { Ledger } from './ledger.ts';
import { moundView } from './view.ts';

export interface Folded {
  readonly ledger: Ledger;
  readonly view: MoundView;
}

/** The fold of `fold.ts` lifted over a stream of facts: the view before the first fact, then one after each. */
export function viewsOf(facts$: Observable<Fact>, start: Ledger, session: string | null): Observable<Folded> {
  return facts$.pipe(
    scan(foldFact, start),
    startWith(start),
    map((ledger) => ({ ledger, view: moundView(ledger, session) })),
  );
}
