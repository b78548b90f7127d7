import type { Fact } from '../facts/fact.ts';
import { foldFact } from './fold.ts';
import { held, type SessionGrowth } from './growth.ts';
import { sessionIn, throwIn, unclaimedThrough, type Ledger } from './ledger.ts';
import type { Recording } from './playhead.ts';
import type { SessionSlice } from './recorded.ts';
import { ownTimeMs } from './own-time.ts';
import { timelineOf } from './timeline.ts';

/** Ledgers that are kept of a recording, and twice as many at most: of an evening's every one, so that a hand that scrubs folds nothing again. */
const KEPT = 1000;

/**
 * A recorded session folded once, with a ledger kept after every fact or every few, so that going anywhere costs a handful of folds.
 * Where nothing is folded again the throws are the same objects at every place, and all that was worked out of them holds.
 */
export interface Checkpoints {
  readonly session: string;
  readonly facts: readonly Fact[];
  /** Facts between two kept ledgers. */
  readonly every: number;
  /** `ledgers[i]` stands after i · every facts. */
  readonly ledgers: readonly Ledger[];
  readonly newest: Ledger;
  /** For each throw of the session, by place: how many facts have been folded when it is first there. */
  readonly entersAt: ReadonlyMap<number, number>;
}

/** A recording with the times at which its facts came, milliseconds since 1970. */
export interface RecordedTimes extends Recording {
  readonly arrivedMs: readonly number[];
}

export function checkpointsOf({ carry, facts }: SessionSlice, session: string): Checkpoints {
  return continued({ session, facts: [], every: Math.ceil(facts.length / KEPT) || 1, ledgers: [carry], newest: carry, entersAt: new Map() }, facts);
}

/**
 * The same recording after it has grown; facts already folded are kept as they are. Null where the carry now holds more,
 * because an older throw was moved into the session: then only the whole slice tells what was.
 */
export function grown(before: Checkpoints, { held: heldNow, facts }: SessionGrowth): Checkpoints | null {
  if (held(before.ledgers[0]!) !== heldNow) return null;
  const known = newestPlace(before);
  return continued(before, facts.filter(({ place }) => place > known));
}

/** The newest place of the log that a recording knows. */
export function newestPlace({ facts }: Pick<SessionSlice, 'facts'>): number {
  return facts.at(-1)?.place ?? 0;
}

/** The ledger after the first `applied` facts. */
export function ledgerAt({ facts, every, ledgers, newest }: Checkpoints, applied: number): Ledger {
  if (applied >= facts.length) return newest;
  const index = Math.floor(Math.max(0, applied) / every);
  return facts.slice(index * every, applied).reduce(foldFact, ledgers[index]!);
}

/** The recording as the playhead sees it. What is said after the close, however much later, comes at its end. */
export function recordingOf({ facts, newest, session, entersAt }: Checkpoints, foldQuiet: boolean): RecordedTimes {
  const entering = new Set(entersAt.values());
  const arrivedMs = facts.map((fact) => Math.min(ownTimeMs(fact), sessionIn(newest, session)?.closedAtMs ?? Infinity));
  return {
    arrivedMs,
    timelineMs: timelineOf(arrivedMs, foldQuiet),
    isThrow: facts.map((_, index) => entering.has(index + 1)),
    open: sessionIn(newest, session)?.closedAtMs === null,
  };
}

function continued(before: Checkpoints, more: readonly Fact[]): Checkpoints {
  const { session, every } = before;
  const facts = [...before.facts];
  const ledgers = [...before.ledgers];
  const entersAt = new Map(before.entersAt);
  let { newest } = before;
  for (const fact of more) {
    const places = placesMoving(fact, newest);
    newest = foldFact(newest, fact);
    facts.push(fact);
    for (const place of places) {
      if (throwIn(newest, place)?.session === session && !entersAt.has(place)) entersAt.set(place, facts.length);
    }
    if (facts.length % every === 0) ledgers.push(newest);
  }
  const tooMany = ledgers.length > 2 * KEPT;
  return { session, facts, every: tooMany ? 2 * every : every, ledgers: tooMany ? ledgers.filter((_, index) => index % 2 === 0) : ledgers, newest, entersAt };
}

function placesMoving({ place, said }: Fact, ledger: Ledger): readonly number[] {
  switch (said.kind) {
    case 'throw-measured':
    case 'throw-imported': return [place];
    case 'throws-moved': return said.places;
    case 'throws-claimed': return unclaimedThrough(ledger, said.through);
    default: return [];
  }
}
