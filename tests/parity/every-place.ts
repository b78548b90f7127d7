import type { MoundView } from '../../core/facts/views.ts';
import { checkpointsOf, grown, ledgerAt, newestPlace } from '../../core/session/checkpoints.ts';
import { foldFact } from '../../core/session/fold.ts';
import { growthSince } from '../../core/session/growth.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { sliceOf } from '../../core/session/recorded.ts';
import { moundView } from '../../core/session/view.ts';
import type { Day } from './sessions.ts';

/** Every place at which a session of the day, played from its slice, does not show what was shown live; none is right. */
export function placesThatDiffer({ facts, sessions }: Day): string[] {
  const ledgers = [emptyLedger(facts[0]!.mound)];
  for (const fact of facts) ledgers.push(foldFact(ledgers.at(-1)!, fact));
  return sessions.flatMap((session) => {
    const slice = sliceOf(facts, session)!;
    const played = checkpointsOf(slice, session);
    const inside = slice.facts.flatMap(({ place }, index) => differs(ledgers[place]!, ledgerAt(played, index + 1), session) ?? []);
    const end = shown(moundView(ledgers.at(-1)!, session)) === shown(moundView(played.newest, session)) ? [] : [`${session} at its end`];
    return [...inside, ...end];
  });
}

/** Every place at which a session that was followed while it grew is not what a fresh look at its slice gives. */
export function growthsThatDiffer({ facts, sessions }: Day): string[] {
  return sessions.flatMap((session) => {
    const opening = facts.findIndex(({ said }) => said.kind === 'session-opened' && said.session === session) + 1;
    let followed = checkpointsOf(sliceOf(facts.slice(0, opening), session)!, session);
    return facts.slice(opening).flatMap((fact) => {
      const slice = sliceOf(facts.slice(0, fact.place), session)!;
      followed = grown(followed, growthSince(slice, newestPlace(followed))) ?? checkpointsOf(slice, session);
      return differs(checkpointsOf(slice, session).newest, followed.newest, session) ?? [];
    });
  });
}

function differs(live: Ledger, played: Ledger, session: string): string | null {
  return JSON.stringify(moundView(live, session)) === JSON.stringify(moundView(played, session)) ? null : `${session} at place ${live.place}`;
}

function shown({ session, throws }: MoundView): string {
  return JSON.stringify({ session, throws });
}
