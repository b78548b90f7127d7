import type { Database } from 'libsql';
import type { Fact } from '../../core/facts/fact.ts';
import { eraseFacts } from './erase.ts';
import type { AppendAllReply, AppendReply, DamagedFact, Entry, EraseReply, FactLog, RefusalEntry, RefuseReply, StorageFailure } from './fact-log.ts';
import { GroupCommit, type GroupEnd } from './group-commit.ts';
import { Numbers } from './numbers.ts';
import { openDatabase, PAGES_BESIDE, type OpenDatabase } from './open-database.ts';
import { MOUNDS } from './mounds.ts';
import { growing } from './rows.ts';
import { FACT_COLUMNS, storedFact, type FactRow } from './stored-fact.ts';
import { markUnswept, sweep } from './sweep.ts';
import { inTransaction } from './transaction.ts';
import { writer, type Written } from './write.ts';
import { NotFlushed, startWriting, Together } from './writing.ts';

export interface LogOptions {
  readonly file: string;
  readonly nowMs: () => number;
  readonly newId: () => string;
  /** Told of every write that failed, and of every listener that did. */
  readonly onTrouble: (error: unknown) => void;
  /** Most pages of 4 KiB that the file may have; left out, the disk is the bound. */
  readonly largestPages?: number;
}

/** `keptCopy` is the file as it was before an upgrade; null when there was none. */
export type OpenedLog = { readonly kind: 'open'; readonly log: FactLog; readonly keptCopy: string | null } | { readonly kind: 'failed'; readonly sentence: string };

/** Opens the log in an SQLite file, made when it is not there. Expected failures come as one sentence. */
export function openSqliteLog(options: LogOptions): OpenedLog {
  const opened = openDatabase(options.file, options.nowMs(), options.largestPages ?? null);
  return opened.kind === 'failed' ? opened : { kind: 'open', log: logOver(opened, options), keptCopy: opened.keptCopy };
}

/** Who reads may read something else in between, so no statement is left open. */
const ROWS_AT_ONCE = 500;

type Write = { readonly kind: 'fact'; readonly entry: Entry } | { readonly kind: 'refusal'; readonly refusal: RefusalEntry };

function logOver({ database, letGo }: OpenDatabase, { file, nowMs, newId, onTrouble, largestPages }: LogOptions): FactLog {
  let id = identityOf(database, newId, nowMs());
  const together = new Together();
  const numbers = new Numbers(database, together.numbers);
  const write = writer(database, numbers, together);
  const selectFacts = database.prepare(`SELECT ${FACT_COLUMNS} FROM facts WHERE mound = ? AND place > ? AND place <= ? ORDER BY place LIMIT ${ROWS_AT_ONCE}`);
  const selectMounds = database.prepare(MOUNDS);
  const selectNewest = database.prepare('SELECT coalesce(max(place), 0) AS place FROM facts WHERE mound = ?');
  const selectRequest = database.prepare('SELECT mound, place FROM requests WHERE request = ?');
  const countRefusals = database.prepare('SELECT code, count(*) AS count FROM refusals GROUP BY code ORDER BY code');
  const listeners = new Set<(fact: Fact) => void>();
  const underWayListeners = new Set<(fact: Fact) => void>();
  const erasedListeners = new Set<(mounds: readonly string[]) => void>();
  const damaged = new Map<string, DamagedFact>();
  let open = true;

  function writeTogether(writes: readonly Write[], isAlone: boolean, ended: (end: GroupEnd<Written<AppendReply | RefuseReply>>) => void): void {
    const atMs = nowMs();
    let written: Written<AppendReply | RefuseReply>[];
    try {
      written = writes.map((one) => (one.kind === 'fact' ? write.append(one.entry, atMs) : write.refuse(one.refusal, atMs)));
      write.complete();
    } catch (error) {
      together.take();
      return ended({ kind: 'failed', error, why: 'itself' });
    }
    writing.write(together.take(), (trouble) => {
      if (trouble !== null) return ended({ kind: 'failed', ...trouble });
      write.stand();
      ended({ kind: 'lasts', written });
    });
    const [{ fact }] = written as [Written<AppendReply | RefuseReply>];
    if (isAlone && fact !== null) tell(underWayListeners, fact);
  }

  /** By the program itself, which waits: nobody else is written for meanwhile. */
  function appendAll(entries: Iterable<Entry>): AppendAllReply {
    commits.flush();
    const atMs = nowMs();
    const behind = new Map<string, number>();
    const into = growing(database);
    const here = writer(database, new Numbers(database, into.numbers), into);
    let facts = 0;
    const intoFile = (): void => {
      here.complete();
      into.flush();
      here.stand();
    };
    try {
      inTransaction(database, () => {
        for (const entry of entries) {
          const { fact } = here.append(entry, atMs);
          if (fact === null) throw new AlreadyStored();
          if (!behind.has(fact.mound)) behind.set(fact.mound, fact.place - 1);
          facts += 1;
          if (facts % ROWS_AT_ONCE === 0) intoFile();
        }
        intoFile();
      });
    } catch (error) {
      if (error instanceof AlreadyStored) return { kind: 'known' };
      onTrouble(error);
      return failure(error);
    }
    // The last places and numbers are other ones now.
    write.forget();
    // Read back rather than kept meanwhile: they can be a million.
    if (listeners.size > 0) for (const [mound, place] of behind) for (const fact of factsOf(mound, place)) tell(listeners, fact);
    return { kind: 'stored', facts };
  }

  function* factsOf(mound: string, afterPlace: number, throughPlace = Number.MAX_SAFE_INTEGER): Generator<Fact> {
    for (let after = afterPlace; after < throughPlace;) {
      const rows = selectFacts.all(mound, after, throughPlace) as FactRow[];
      for (const row of rows) {
        const fact = storedFact(row);
        if (fact === null) passOver(row);
        else yield fact;
      }
      if (rows.length < ROWS_AT_ONCE) return;
      after = rows.at(-1)!.place;
    }
  }

  /** Said once of each, however often it is read. */
  function passOver({ mound, place }: FactRow): void {
    const key = `${mound} ${place}`;
    if (damaged.has(key)) return;
    damaged.set(key, { mound, place });
    onTrouble(new Error(`The fact at place ${place} of ${mound} is damaged; it is kept as it is and passed over. A backup may hold it whole.`));
  }

  /** What is on disk is acknowledged, whatever a listener makes of it. */
  function tell(whom: ReadonlySet<(fact: Fact) => void>, fact: Fact): void {
    for (const listener of whom) {
      try {
        listener(fact);
      } catch (error) {
        onTrouble(error);
      }
    }
  }

  function erase(athlete: string, by: string): EraseReply {
    commits.flush();
    const newLog = newId();
    const atMs = nowMs();
    try {
      database.pragma('secure_delete = ON');
      const erased = inTransaction(database, () => {
        const facts = eraseFacts(database, athlete, by, atMs);
        if (facts === null) return null;
        database.prepare('UPDATE log SET id = ?').run(newLog);
        markUnswept(database);
        return facts;
      });
      if (erased === null) return { kind: 'unknown' };
      id = newLog;
      damaged.clear();
      for (const listener of erasedListeners) listener(erased.mounds);
      return { kind: 'erased', ...erased, swept: swept() };
    } catch (error) {
      onTrouble(error);
      return failure(error);
    }
  }

  function swept(): boolean {
    try {
      sweep(database);
      return true;
    } catch (error) {
      onTrouble(error);
      return false;
    }
  }

  const writing = startWriting({ file, largestPages: largestPages ?? null, pagesBeside: PAGES_BESIDE });
  const commits = new GroupCommit<Write, Written<AppendReply | RefuseReply>, AppendReply | RefuseReply>({ write: writeTogether, wait: writing.wait, forget: write.forget }, {
    lasts({ fact, reply }) {
      if (fact !== null) tell(listeners, fact);
      return reply;
    },
    failed(error) {
      onTrouble(error);
      return failure(error);
    },
  });
  const closed: StorageFailure = { kind: 'failed', sentence: 'The server is stopping and stores nothing more; send it again when the server is back.' };

  return {
    get id() {
      return id;
    },
    append: (entry) => (open ? (commits.add({ kind: 'fact', entry }) as Promise<AppendReply>) : Promise.resolve(closed)),
    appendAll: (entries) => (open ? appendAll(entries) : closed),
    refuse: (refusal) => (open ? (commits.add({ kind: 'refusal', refusal }) as Promise<RefuseReply>) : Promise.resolve(closed)),
    isCrowded: () => commits.isCrowded,
    isQuiet: () => commits.isQuiet,
    read: factsOf,
    mounds: () => (selectMounds.all() as { mound: string }[]).map(({ mound }) => mound),
    newest: (mound) => (selectNewest.get(mound) as { place: number }).place,
    settled(device, run) {
      // Who hears that a number is settled forgets its throw.
      commits.flush();
      return numbers.settled(device, run);
    },
    find(identity) {
      const found = numbers.find(identity);
      if (found === null) return null;
      return found.kind === 'refused' ? { kind: 'refused' } : { kind: 'stored', mound: found.mound, place: found.place };
    },
    knowsRequest: (request) => selectRequest.get(request) !== undefined,
    requested(request) {
      const at = selectRequest.get(request) as { mound: string; place: number } | undefined;
      const [fact] = at === undefined ? [] : factsOf(at.mound, at.place - 1, at.place);
      return fact ?? null;
    },
    refusals: () => Object.fromEntries((countRefusals.all() as { code: string; count: number }[]).map(({ code, count }) => [code, count])),
    damaged: () => [...damaged.values()],
    onAppended(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onUnderWay(listener) {
      underWayListeners.add(listener);
      return () => underWayListeners.delete(listener);
    },
    erase: (athlete, by) => (open ? erase(athlete, by) : closed),
    onErased(listener) {
      erasedListeners.add(listener);
      return () => erasedListeners.delete(listener);
    },
    close() {
      if (!open) return;
      commits.flush();
      open = false;
      writing.close();
      letGo();
    },
  };
}

/** Undoes the writing of many at once. */
class AlreadyStored extends Error {}

function identityOf(database: Database, newId: () => string, nowMs: number): string {
  database.prepare('INSERT INTO log VALUES (1, ?, ?) ON CONFLICT DO NOTHING').run(newId(), nowMs);
  return (database.prepare('SELECT id FROM log').get() as { id: string }).id;
}

function failure(error: unknown): StorageFailure {
  if (error instanceof NotFlushed) return { kind: 'failed', sentence: 'The disk of the server failed, so nobody knows whether this is stored; see the log of the server and start it anew, then send it again.' };
  const full = (error as { readonly code?: string }).code === 'SQLITE_FULL';
  return {
    kind: 'failed',
    sentence: full
      ? 'Nothing was stored because the disk of the server is full; make room, then send it again.'
      : 'Nothing was stored because the server could not write to its disk; see the log of the server, then send it again.',
  };
}
