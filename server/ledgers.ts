import { Subject, type Observable } from 'rxjs';
import { FACT_VERSION, type Fact } from '../core/facts/fact.ts';
import { SCIENCE_VERSION } from '../core/session/analyse.ts';
import { emptyLedger, knowsSession, thrownBy, type Ledger, type Thrown } from '../core/session/ledger.ts';
import type { SessionSlice } from '../core/session/recorded.ts';
import { Brought } from './brought.ts';
import { catchUp, type Behind, type Watched } from './catch-up.ts';
import { codeOfCore } from './code-of-core.ts';
import type { FactLog } from './log/fact-log.ts';
import { openShelf } from './log/shelf.ts';
import { removeWhole } from './log/whole-file.ts';
import { lookThrough } from './look-through.ts';
import { MoundState, type MoundParts } from './mound-state.ts';

/** The present state of every mound, kept by following the log. */
export interface Ledgers {
  /** Of a mound without facts: an empty one. */
  of(mound: string): Ledger;
  all(): Ledger[];
  /** The recording of a session; null for one that nobody has opened. */
  recorded(session: string): { readonly mound: string; readonly slice: SessionSlice } | null;
  /** The state of a mound after each fact from now on. */
  states(mound: string): Observable<Ledger>;
  /**
   * The state that a mound will have if a throw comes to be that is on its way to the disk, while there is time. It is the very one of
   * `states` then; nothing of it may be shown before.
   */
  coming(mound: string): Observable<Ledger>;
  /** Calls after ledgers were folded anew, because somebody was erased: what was made of them before no longer stands. */
  onRefolded(listener: () => void): void;
  close(): void;
}

interface Streams {
  readonly states: Subject<Ledger>;
  readonly coming: Subject<Ledger>;
}

/**
 * Takes every mound's state as it was kept, or folds the whole log, then follows it.
 * @param file where states are kept between two starts
 * @param throwsAtHand throws of closed sessions that stay in memory
 * @throws the reason of `stop` where that is asked for before all is read; what was read is kept
 */
export async function followLedgers(log: FactLog, file: string, onTrouble: (error: unknown) => void, watched: Watched, throwsAtHand?: number): Promise<Ledgers> {
  const code = codeOfCore();
  /** Of another log, another science, other facts, another program, nothing that was kept is believed. */
  const stamp = (): string => [log.id, SCIENCE_VERSION, FACT_VERSION, code, process.versions.v8].join(' ');
  let shelf = openShelf(file, stamp(), onTrouble);
  const brought = new Brought(throwsAtHand);
  const mounds = new Map<string, MoundState>();
  const streams = new Map<string, Streams>();
  const refolded: (() => void)[] = [];

  const of = (mound: string): Ledger => mounds.get(mound)?.ledger ?? emptyLedger(mound);
  const all = (): Ledger[] => [...mounds.values()].map(({ ledger }) => ledger);

  function partsOf(mound: string): MoundParts {
    return { log, file: shelf, brought, onTrouble, lost: (session) => lost(mound, session) };
  }

  /** The file is damaged where these throws were: the log has them. */
  function lost(mound: string, session: string): Thrown {
    onTrouble(new Error(`What was put away of ${mound} could not be read back, so its log is read anew.`));
    readAnew(mound);
    return thrownBy(of(mound), session);
  }

  /** As it was kept; the facts behind that are still to be read. */
  function asKept(mound: string): Behind {
    shelf.together(() => mounds.set(mound, new MoundState(mound, partsOf(mound), 'kept')));
    const state = (): MoundState => mounds.get(mound)!;
    return {
      from: of(mound).place,
      through: log.newest(mound),
      read: (through) => shelf.together(() => state().read(through)),
      end: () => state().keepFound(),
    };
  }

  function readAnew(mound: string): void {
    shelf.together(() => {
      const state = new MoundState(mound, partsOf(mound), 'nothing');
      state.read();
      state.keepFound();
      mounds.set(mound, state);
    });
  }

  function keepAll(): void {
    for (const state of mounds.values()) state.keep();
    shelf.close();
  }

  function take(fact: Fact): void {
    const state = mounds.get(fact.mound) ?? new MoundState(fact.mound, partsOf(fact.mound), 'nothing');
    mounds.set(fact.mound, state);
    state.take(fact);
    streams.get(fact.mound)?.states.next(state.ledger);
  }

  function follow(fact: Fact): void {
    const { place } = of(fact.mound);
    if (fact.place <= place) return;
    if (fact.place === place + 1) return take(fact);
    // A commit that was reported as failed can be on disk after all.
    for (const missed of [...log.read(fact.mound, place)]) if (missed.place <= fact.place) take(missed);
  }

  /** Nobody makes views of a mound that nobody follows. */
  function expect(fact: Fact): void {
    const stream = streams.get(fact.mound);
    const state = mounds.get(fact.mound);
    if (stream?.states.observed !== true || state === undefined) return;
    state.expect(fact);
    // Behind a look at what has come meanwhile: the answer of the disk above all.
    if (stream.coming.observed) setImmediate(() => {
      if (open && state.coming !== null) stream.coming.next(state.coming);
    });
  }

  function streamsOf(mound: string): Streams {
    const known = streams.get(mound) ?? { states: new Subject<Ledger>(), coming: new Subject<Ledger>() };
    streams.set(mound, known);
    return known;
  }

  /** Nothing that was put away of these mounds may be found again. */
  function refold(changed: readonly string[]): void {
    brought.clear();
    for (const mound of erasedFrom(changed) ? changed : mounds.keys()) readAnew(mound);
    for (const listener of refolded) listener();
  }

  /** False where only a new file is rid of it. */
  function erasedFrom(changed: readonly string[]): boolean {
    try {
      shelf.erase(changed, stamp());
      return true;
    } catch (error) {
      onTrouble(error);
      shelf.close();
      removeWhole(file);
      shelf = openShelf(file, stamp(), onTrouble);
      return false;
    }
  }

  const behind = log.mounds().map(asKept);
  const unreadThrough = new Map([...mounds.keys()].map((mound) => [mound, of(mound).place]));
  try {
    await catchUp(behind, watched);
  } catch (error) {
    keepAll();
    throw error;
  }
  let open = true;
  lookThrough(log, unreadThrough, () => open).catch(onTrouble);
  const stops = [log.onAppended(follow), log.onUnderWay(expect), log.onErased(refold)];

  return {
    of,
    all,
    recorded(session) {
      const found = [...mounds].find(([, { ledger }]) => knowsSession(ledger, session));
      return found === undefined ? null : { mound: found[0], slice: found[1].recorded(session) };
    },
    states: (mound) => streamsOf(mound).states,
    coming: (mound) => streamsOf(mound).coming,
    onRefolded: (listener) => void refolded.push(listener),
    close() {
      open = false;
      for (const stop of stops) stop();
      for (const { states, coming } of streams.values()) for (const stream of [states, coming]) stream.complete();
      keepAll();
    },
  };
}
