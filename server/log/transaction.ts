import type { Database } from 'libsql';

/** Runs `write` in one transaction: all of it is on disk when this returns, none of it when it throws. */
export function inTransaction<Result>(database: Database, write: () => Result): Result {
  database.exec('BEGIN IMMEDIATE');
  try {
    const result = write();
    database.exec('COMMIT');
    return result;
  } catch (error) {
    // A full disk may already have rolled back.
    if (database.inTransaction) database.exec('ROLLBACK');
    throw error;
  }
}
