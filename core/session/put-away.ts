import { countedIn } from './counted.ts';
import { newestOwn } from './fastballs.ts';
import { sessionIn, type Ledger, type PutAway, type Shelf, type Thrown } from './ledger.ts';
import { countsOf } from './throwing-days.ts';

/** The closed sessions whose throws are at hand, in the order of opening. */
export function closedAtHand({ closed, throws }: Ledger): string[] {
  return Object.keys(throws).flatMap((id) => closed[id] ?? []).sort((a, b) => a.openedPlace - b.openedPlace).map(({ id }) => id);
}

/**
 * The same ledger with the throws of a closed session put away: everything that is asked of it afterwards, and every fact that
 * comes, gives what it would have given, to the last bit.
 * @param session one whose throws are at hand
 * @param pack the number under which the shelf now has them
 */
export function putAway(ledger: Ledger, session: string, pack: number, shelf: Shelf): Ledger {
  const { [session]: thrown, ...throws } = ledger.throws;
  return { ...ledger, throws, shelf, away: { ...ledger.away, [session]: summed(ledger, session, thrown!, pack) } };
}

function summed(ledger: Ledger, session: string, thrown: Thrown, pack: number): PutAway {
  return {
    pack,
    ...countedIn(thrown, session),
    baselines: newestOwn(thrown, sessionIn(ledger, session)!),
    days: countsOf(thrown),
    first: thrown[0]![0]!.place,
    last: thrown.at(-1)!.at(-1)!.place,
    numbers: numbersIn(thrown),
  };
}

function numbersIn(thrown: Thrown): PutAway['numbers'] {
  const found = new Map<string, PutAway['numbers'][number]>();
  for (const { source: { device, run, sequence } } of thrown.flat()) {
    const key = `${device}\n${run}`;
    const known = found.get(key) ?? { device, run, from: sequence, to: sequence };
    found.set(key, { device, run, from: Math.min(known.from, sequence), to: Math.max(known.to, sequence) });
  }
  return [...found.values()];
}
