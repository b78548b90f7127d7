import type { Database } from 'libsql';
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';

/**
 * Copies the whole of an open database into one file, as it stands between two commits, while others go on writing.
 * The file has its name only once all of it is on disk; one that had the name before is replaced.
 */
export function copyTo(database: Database, file: string): void {
  const unfinished = `${file}.unfinished`;
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  rmSync(unfinished, { force: true });
  database.prepare('VACUUM INTO ?').run(unfinished);
  flushToDisk(unfinished);
  renameSync(unfinished, file);
  flushToDisk(path.dirname(file));
}

/** Of a folder: that its files have their names. */
export function flushToDisk(fileOrFolder: string): void {
  const opened = openSync(fileOrFolder, 'r');
  fsyncSync(opened);
  closeSync(opened);
}
