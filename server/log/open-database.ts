import Database from 'libsql';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { copyTo } from './copy.ts';
import { MOUNDS } from './mounds.ts';
import { takeFolder } from './only-one.ts';
import { formatOf, migrate, MIGRATIONS } from './schema.ts';
import { shelfBeside } from './shelf.ts';
import { isUnswept, sweep } from './sweep.ts';
import { closeWhole, removeWhole } from './whole-file.ts';

/** Pages of 4 KiB that the write-ahead log gathers before they are put into the file itself: meanwhile nothing else is written. */
export const PAGES_BESIDE = 4000;

/** An open file of the log. */
export interface OpenDatabase {
  readonly kind: 'open';
  readonly database: Database.Database;
  /** The copy of the file as it was before it was upgraded; null when it was not. */
  readonly keptCopy: string | null;
  /** Closes, and gives the folder back. */
  letGo(): void;
}

interface Failed {
  readonly kind: 'failed';
  readonly sentence: string;
}

/**
 * Opens the file of the log for this program alone, in the newest format; of a file in an older one a copy is kept first.
 * `largestPages` bounds the file in pages of 4 KiB.
 * @returns what is open, or one sentence on why it is not and what to do
 */
export function openDatabase(file: string, nowMs: number, largestPages: number | null): OpenDatabase | Failed {
  const undo: (() => void)[] = [];
  const letGo = (): void => undo.splice(0).toReversed().forEach((step) => step());
  try {
    mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
    undo.push(takeFolder(path.dirname(file)));
    const database = new Database(file);
    undo.push(() => closeWhole(database));
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    if (largestPages !== null) database.pragma(`max_page_count = ${largestPages}`);
    const format = formatOf(database);
    if (typeof format === 'object') throw new Unusable(newerFormat(file, format.newer));
    const keptCopy = format === 'older' ? keepCopy(database, file) : null;
    migrate(database, nowMs);
    // What was worked out from the log before the erasure goes whole: whoever erased was stopped before it was put out of there.
    if (isUnswept(database)) removeWhole(shelfBeside(file));
    sweep(database);
    const trouble = holes(database, file);
    if (trouble !== null) throw new Unusable(trouble);
    database.pragma(`wal_autocheckpoint = ${PAGES_BESIDE}`);
    return { kind: 'open', database, keptCopy, letGo };
  } catch (error) {
    letGo();
    return { kind: 'failed', sentence: error instanceof Unusable ? error.message : whyNot(file, error) };
  }
}

/** A file that can be read and not be used; the message is one sentence. */
class Unusable extends Error {}

function keepCopy(database: Database.Database, file: string): string {
  const copy = path.join(path.dirname(file), 'backups', `facts-before-format-${MIGRATIONS.at(-1)!.version}.db`);
  copyTo(database, copy);
  return copy;
}

function newerFormat(file: string, version: number): string {
  return `The log in ${file} was written by a newer Offpace (format ${version}); update Offpace, or give another folder with --data.`;
}

/** Places of a mound are whole numbers, each there once: they are all there when as many are counted as the last ones say. */
function holes(database: Database.Database, file: string): string | null {
  const { counted, expected, lowest } = database.prepare(`
    SELECT (SELECT count(*) FROM facts) AS counted, coalesce(sum((SELECT max(place) FROM facts WHERE facts.mound = mounds.mound)), 0) AS expected,
      coalesce(min((SELECT min(place) FROM facts WHERE facts.mound = mounds.mound)), 1) AS lowest
    FROM (${MOUNDS}) AS mounds`).get() as { counted: number; expected: number; lowest: number };
  if (counted === expected && lowest === 1) return null;
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
