import Database from 'libsql';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { migrate } from './schema.ts';

export type Opened = { readonly kind: 'open'; readonly database: Database.Database } | { readonly kind: 'failed'; readonly sentence: string };

/**
 * Opens the file of the log, alone: the lock is the kernel's and goes with the process, however that ends.
 * `largestPages` bounds the file in pages of 4 KiB.
 * @returns what is open, or one sentence on why it is not and what to do
 */
export function openDatabase(file: string, nowMs: number, largestPages: number | null): Opened {
  let database: Database.Database | null = null;
  try {
    mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
    database = new Database(file);
    // Before the first use of the write-ahead log, so that the lock is held from then on.
    database.pragma('locking_mode = EXCLUSIVE');
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    if (largestPages !== null) database.pragma(`max_page_count = ${largestPages}`);
    const newer = migrate(database, nowMs);
    const trouble = newer === null ? holes(database, file) : newerSchema(file, newer);
    if (trouble === null) return { kind: 'open', database };
    letGo(database);
    return { kind: 'failed', sentence: trouble };
  } catch (error) {
    database?.close();
    return { kind: 'failed', sentence: whyNot(file, error) };
  }
}

/**
 * Closes, and gives the lock back first: statements that are not collected yet would keep the file open.
 */
export function letGo(database: Database.Database): void {
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.pragma('journal_mode = DELETE');
  database.pragma('locking_mode = NORMAL');
  database.prepare('SELECT count(*) FROM schema_versions').get();
  database.close();
}

function newerSchema(file: string, version: number): string {
  return `The log in ${file} was written by a newer Offpace (schema ${version}); update Offpace, or give another folder with --data.`;
}

function holes(database: Database.Database, file: string): string | null {
  const broken = database.prepare('SELECT mound FROM facts GROUP BY mound HAVING min(place) <> 1 OR max(place) <> count(*)').get() as { mound: string } | undefined;
  return broken === undefined ? null : `The log of ${broken.mound} in ${file} has holes, so the file is damaged; put back a copy, or give another folder with --data.`;
}

function whyNot(file: string, error: unknown): string {
  const folder = path.dirname(file);
  const { code, message } = error as { readonly code?: string; readonly message: string };
  switch (code) {
    case 'SQLITE_BUSY': return `Another Offpace is using ${folder}; stop that one, or give another folder with --data.`;
    case 'SQLITE_NOTADB':
    case 'SQLITE_CORRUPT': return `${file} is damaged or no log of Offpace; put back a copy, or give another folder with --data.`;
    case 'SQLITE_FULL':
    case 'ENOSPC': return `The disk that holds ${folder} is full; make room, or give another folder with --data.`;
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
    case 'SQLITE_READONLY': return `This account may not write in ${folder}; change that, or give another folder with --data.`;
    case 'EEXIST':
    case 'ENOTDIR': return `${folder} is not a folder; give one with --data.`;
    default: return `The log in ${file} cannot be opened (${message}); give another folder with --data.`;
  }
}
