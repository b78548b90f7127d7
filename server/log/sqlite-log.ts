import type { Database } from 'libsql';
import type { Fact } from '../../core/facts/fact.ts';
import type { AppendReply, Entry, FactLog, RefusalEntry, RefuseReply, StorageFailure } from './fact-log.ts';
import { GroupCommit } from './group-commit.ts';
import { findNumber, readSettled } from './numbers.ts';
import { letGo, openDatabase } from './open-database.ts';
import { storedFact, type FactRow } from './stored-fact.ts';
import { inTransaction } from './transaction.ts';
import { writer, type Written } from './write.ts';

export interface LogOptions {
  readonly file: string;
  readonly nowMs: () => number;
  readonly newId: () => string;
  /** Told of every write that failed, and of every listener that did. */
  readonly onTrouble: (error: unknown) => void;
  /** Most pages of 4 KiB that the file may have; left out, the disk is the bound. */
  readonly largestPages?: number;
}

export type OpenedLog = { readonly kind: 'open'; readonly log: FactLog } | { readonly kind: 'failed'; readonly sentence: string };

/** Opens the log in an SQLite file, made when it is not there. Expected failures come as one sentence. */
export function openSqliteLog(options: LogOptions): OpenedLog {
  const opened = openDatabase(options.file, options.nowMs(), options.largestPages ?? null);
  return opened.kind === 'failed' ? opened : { kind: 'open', log: logOver(opened.database, options) };
}

type Write = { readonly kind: 'fact'; readonly entry: Entry } | { readonly kind: 'refusal'; readonly refusal: RefusalEntry };

function logOver(database: Database, { nowMs, newId, onTrouble }: LogOptions): FactLog {
  const id = identityOf(database, newId, nowMs());
  const write = writer(database);
  const settled = readSettled(database);
  const number = findNumber(database);
  const selectFacts = database.prepare('SELECT mound, place, at_ms, said_by, version, said FROM facts WHERE mound = ? AND place > ? ORDER BY place');
  const selectMounds = database.prepare('SELECT DISTINCT mound FROM facts ORDER BY mound');
  const selectRequest = database.prepare('SELECT 1 FROM requests WHERE request = ?');
  const countRefusals = database.prepare('SELECT code, count(*) AS count FROM refusals GROUP BY code ORDER BY code');
  const listeners = new Set<(fact: Fact) => void>();
  let open = true;

  function commitAll(writes: readonly Write[]): (AppendReply | RefuseReply)[] {
    const atMs = nowMs();
    const written = inTransaction(database, () => writes.map((one): Written<AppendReply | RefuseReply> =>
      (one.kind === 'fact' ? write.append(one.entry, atMs) : write.refuse(one.refusal, atMs))));
    for (const { fact } of written) if (fact !== null) tell(fact);
    return written.map(({ reply }) => reply);
  }

  /** What is on disk is acknowledged, whatever a listener makes of it. */
  function tell(fact: Fact): void {
    for (const listener of listeners) {
      try {
        listener(fact);
      } catch (error) {
        onTrouble(error);
      }
    }
  }

  const commits = new GroupCommit<Write, AppendReply | RefuseReply>(commitAll, (error) => {
    onTrouble(error);
    return failure(error);
  });
  const closed: StorageFailure = { kind: 'failed', sentence: 'The server is stopping and stores nothing more; send it again when the server is back.' };

  return {
    id,
    append: async (entry) => (open ? ((await commits.add({ kind: 'fact', entry })) as AppendReply) : closed),
    refuse: async (refusal) => (open ? ((await commits.add({ kind: 'refusal', refusal })) as RefuseReply) : closed),
    *read(mound, afterPlace) {
      for (const row of selectFacts.iterate(mound, afterPlace)) yield storedFact(row as FactRow);
    },
    mounds: () => (selectMounds.all() as { mound: string }[]).map(({ mound }) => mound),
    settled,
    find(identity) {
      const found = number(identity);
      if (found === null) return null;
      return found.kind === 'refused' ? { kind: 'refused' } : { kind: 'stored', mound: found.mound, place: found.place };
    },
    knowsRequest: (request) => selectRequest.get(request) !== undefined,
    refusals: () => Object.fromEntries((countRefusals.all() as { code: string; count: number }[]).map(({ code, count }) => [code, count])),
    onAppended(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      if (!open) return;
      commits.flush();
      open = false;
      letGo(database);
    },
  };
}

function identityOf(database: Database, newId: () => string, nowMs: number): string {
  database.prepare('INSERT INTO log VALUES (1, ?, ?) ON CONFLICT DO NOTHING').run(newId(), nowMs);
  return (database.prepare('SELECT id FROM log').get() as { id: string }).id;
}

function failure(error: unknown): StorageFailure {
  const full = (error as { readonly code?: string }).code === 'SQLITE_FULL';
  return {
    kind: 'failed',
    sentence: full
      ? 'Nothing was stored because the disk of the server is full; make room, then send it again.'
      : 'Nothing was stored because the server could not write to its disk; see the log of the server, then send it again.',
  };
}
