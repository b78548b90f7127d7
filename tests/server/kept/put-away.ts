import type { Fact } from '../../../core/facts/fact.ts';
import { daysHere } from '../../../core/session/throwing-days.ts';
import { earlierBaselines } from '../../../core/session/fastballs.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, type Ledger, type Shelf } from '../../../core/session/ledger.ts';
import { closedAtHand, putAway } from '../../../core/session/put-away.ts';
import { findableSessions } from '../../../core/session/session-search.ts';
import { moundView } from '../../../core/session/view.ts';
import { packed, unpacked } from '../../../server/pack.ts';
import type { Day } from '../../parity/sessions.ts';

/** Every place at which a mound whose closed sessions are put away, each as soon as it can be, does not show what it would show with all at hand; none is right. */
export function placesWherePuttingAwayTells({ facts, sessions }: Day): { readonly places: string[]; readonly putAway: number } {
  const packs: Buffer[] = [];
  const read = (after: number, through: number): readonly Fact[] => facts.slice(after, through);
  const shelf: Shelf = { bring: (session, pack) => unpacked(packs[pack]!, session, read)! };
  let [whole, away] = [emptyLedger(facts[0]!.mound), emptyLedger(facts[0]!.mound)];
  const places: string[] = [];
  for (const fact of facts) {
    [whole, away] = [foldFact(whole, fact), foldFact(away, fact)];
    for (const session of closedAtHand(away)) away = putAway(away, session, packs.push(packed(away.throws[session]!)) - 1, shelf);
    const [expected, shown] = [all(whole, sessions), all(away, sessions)];
    places.push(...Object.keys(expected).filter((what) => expected[what] !== shown[what]).map((what) => `${what} at place ${fact.place}`));
  }
  return { places, putAway: packs.length };
}

/** All that is asked of a mound, as text. */
function all(ledger: Ledger, sessions: readonly string[]): Record<string, string> {
  const views = [null, ...sessions].map((session) => [`view of ${session}`, moundView(ledger, session)] as const);
  const brought = Object.keys(ledger.athletes).flatMap((id) => [[`baselines of ${id}`, earlierBaselines(ledger, id)], [`days of ${id}`, daysHere(ledger, id)]] as const);
  return Object.fromEntries([['sessions', findableSessions(ledger)], ...views, ...brought].map(([what, told]) => [what, JSON.stringify(told)]));
}
