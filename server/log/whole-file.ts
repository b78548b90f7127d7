import type { Database } from 'libsql';
import { rmSync } from 'node:fs';

/** Closes a database and leaves one plain file behind, unless somebody is reading it. */
export function closeWhole(database: Database): void {
  try {
    database.pragma('wal_checkpoint(TRUNCATE)');
    database.pragma('journal_mode = DELETE');
  } catch {
    // What is in the write-ahead log beside it is as safe there.
  }
  database.close();
}

/** Removes a database and what stands beside it. Whoever has it open must have closed it. */
export function removeWhole(file: string): void {
  for (const beside of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${beside}`, { force: true });
}
