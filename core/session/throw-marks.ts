import { isFastball } from './fastballs.ts';
import { judged, judgingOf } from './judged.ts';
import { sessionIn, thrownBy, type Ledger } from './ledger.ts';

/** What a throw is where it is no more than a mark among thousands. */
export interface ThrowMark {
  readonly place: number;
  /** The letter of its trial; null outside of one. */
  readonly trial: string | null;
  readonly fastball: boolean;
  /** Null where there is no zone to judge it by. */
  readonly onTarget: boolean | null;
  readonly excluded: boolean;
  readonly bookmarked: boolean;
}

/** All throws of a session as marks: a hundredth of the work of showing each in full. None for a session unknown to the ledger. */
export function throwMarks(ledger: Ledger, session: string): ThrowMark[] {
  const entry = sessionIn(ledger, session);
  if (entry === undefined) return [];
  const thrown = thrownBy(ledger, session);
  const judging = judgingOf(entry, thrown);
  return thrown.flat().map((one) => {
    const { trial, excluded, bookmarked = false } = one.tags[session]!;
    return { place: one.place, trial, fastball: isFastball(one, judging), onTarget: judged(one, judging).miss?.onTarget ?? null, excluded: excluded !== null, bookmarked };
  });
}
