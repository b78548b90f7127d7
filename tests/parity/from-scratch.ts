import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import type { Day } from './sessions.ts';

/** Every place at which what is remembered from place to place gives another view than the same state looked at for the first time. */
export function remembranceThatDiffers({ facts, sessions }: Day): string[] {
  let ledger: Ledger = emptyLedger(facts[0]!.mound);
  return facts.flatMap((fact) => {
    ledger = foldFact(ledger, fact);
    const unread = structuredClone(ledger);
    return [null, ...sessions].flatMap((session) =>
      (JSON.stringify(moundView(ledger, session)) === JSON.stringify(moundView(unread, session)) ? [] : [`${session} at place ${fact.place}`]));
  });
}
