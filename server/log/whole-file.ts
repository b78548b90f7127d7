import type { Database } from 'libsql';
import { rmSync } from 'node:fs';

/** How often, and how far apart, it is tried to have the file alone: a thread that has closed it holds it until its own end, a moment later. */
const TRIES = 100;
const TRIED_EVERY_MS = 5;

/** Closes a database and leaves one plain file behind, unless somebody goes on reading it. */
export function closeWhole(database: Database): void {
  try {
    database.pragma('wal_checkpoint(TRUNCATE)');
    for (let tried = 1; !isPlain(database) && tried < TRIES; tried += 1) Atomics.wait(new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)), 0, 0, TRIED_EVERY_MS);
  } catch {
    // What is in the write-ahead log beside it is as safe there.
  }
  database.close();
}

/** Makes the file a plain one, where nobody else has it open. */
function isPlain(database: Database): boolean {
  try {
    const [{ journal_mode: mode }] = database.pragma('journal_mode = DELETE') as [{ journal_mode: string }];
    return mode !== 'wal';
  } catch (error) {
    if ((error as { readonly code?: string }).code !== 'SQLITE_BUSY') throw error;
    return false;
  }
}

/** Removes a database and what stands beside it. Whoever has it open must have closed it. */
export function removeWhole(file: string): void {
  for (const beside of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${beside}`, { force: true });
}
