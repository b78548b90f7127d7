import type { Database } from 'libsql';

/** Kept in the header of the file, and written in the transaction that erases: whoever is stopped before the sweep sweeps at the next start. */
const UNSWEPT = 1;

/** Inside the transaction that erases. */
export function markUnswept(database: Database): void {
  database.pragma(`user_version = ${UNSWEPT}`);
}

/** Whether something was erased whose traces may still be there. */
export function isUnswept(database: Database): boolean {
  const [{ user_version: mark }] = database.pragma('user_version') as [{ user_version: number }];
  return mark === UNSWEPT;
}

/**
 * Rebuilds a file in which something was erased, and empties the write-ahead log beside it: freed pages, and the gaps between
 * rows, hold what stood there before. Does nothing where nothing was erased.
 */
export function sweep(database: Database): void {
  if (!isUnswept(database)) return;
  rebuild(database);
  database.pragma('user_version = 0');
}

/** Nothing that was deleted stands in the file or beside it any more. */
export function rebuild(database: Database): void {
  emptyBeside(database);
  database.exec('VACUUM');
  emptyBeside(database);
}

function emptyBeside(database: Database): void {
  const [{ busy }] = database.pragma('wal_checkpoint(TRUNCATE)') as [{ busy: number }];
  if (busy !== 0) throw new Error('Another program is reading the log, so what was erased cannot be swept out of its file yet.');
}
