import Database from 'libsql';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { copyTo, flushToDisk } from './copy.ts';
import { holdingOf, type Holding } from './digest.ts';
import { takeFolder } from './only-one.ts';
import { shelfBeside } from './shelf.ts';
import { removeWhole } from './whole-file.ts';

const LOG = 'facts.db';
const NOTE = 'backup.json';
/** What belongs to a running server or to copies, and not to what is kept. */
const NOT_KEPT = /^(?:facts\.db.*|ledgers\.db.*|in-use.*|backups|backup\.json)$/;

/** Where a backup went and what is in it. */
export interface Backup extends Holding {
  readonly folder: string;
}

/** Why a backup was not made or not put back; the message is one sentence that says what to do. */
export class KeepFailure extends Error {}

/**
 * Copies a data folder, while its server runs or not: the log as it stands between two commits, and what lets devices and
 * people in. The folder has its name only once all of it is on disk.
 * @throws {KeepFailure}
 */
export function backUp(dataFolder: string, target: string): Backup {
  if (!existsSync(path.join(dataFolder, LOG))) throw new KeepFailure(`There is no log in ${dataFolder}; give the data folder of a server with --data.`);
  if (existsSync(target)) throw new KeepFailure(`${target} is already there; give a folder that is not with --to.`);
  const unfinished = `${target}.unfinished`;
  rmSync(unfinished, { recursive: true, force: true });
  mkdirSync(unfinished, { recursive: true, mode: 0o700 });
  withDatabase(path.join(dataFolder, LOG), (database) => copyTo(database, path.join(unfinished, LOG)));
  copyRest(dataFolder, unfinished);
  const holding = withDatabase(path.join(unfinished, LOG), holdingOf);
  writeFileSync(path.join(unfinished, NOTE), `${JSON.stringify(holding, null, 1)}\n`, { mode: 0o600, flush: true });
  renameSync(unfinished, target);
  flushToDisk(path.dirname(target));
  return { folder: target, ...holding };
}

/**
 * Puts a backup into a data folder that no server uses, and proves that it holds the same.
 * @param keepAs where to back up first what the folder holds now; null to refuse a folder that holds a log
 * @throws {KeepFailure} when the backup is damaged, the folder in use, or something is in the way: then nothing was changed
 */
export function restore(backup: string, dataFolder: string, keepAs: string | null): Holding {
  const noted = noteOf(backup);
  if (withDatabase(path.join(backup, LOG), holdingOf).digest !== noted.digest) throw new KeepFailure(`The backup in ${backup} is damaged: it does not hold what was written into it; take another one.`);
  mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
  const giveBack = taken(dataFolder);
  try {
    const log = path.join(dataFolder, LOG);
    if (existsSync(log)) {
      if (keepAs === null) throw new KeepFailure(`${dataFolder} holds a log already; give another folder with --data, or put the backup in its place with --replace: what is there now is backed up first.`);
      backUp(dataFolder, keepAs);
    }
    // Whoever is stopped between these finds the old log or the new one; what is left beside the old one is in its backup.
    withDatabase(path.join(backup, LOG), (database) => copyTo(database, `${log}.restored`));
    for (const beside of ['-wal', '-shm']) rmSync(`${log}${beside}`, { force: true });
    removeWhole(shelfBeside(log));
    renameSync(`${log}.restored`, log);
    copyRest(backup, dataFolder);
    flushToDisk(dataFolder);
    const holding = withDatabase(log, holdingOf);
    if (holding.digest !== noted.digest) throw new KeepFailure(`What was put into ${dataFolder} is not what the backup holds; its disk may be failing. The backup itself is whole.`);
    return holding;
  } finally {
    giveBack();
  }
}

function noteOf(backup: string): Holding {
  try {
    return JSON.parse(readFileSync(path.join(backup, NOTE), 'utf8')) as Holding;
  } catch {
    throw new KeepFailure(`There is no finished backup in ${backup}; give the folder of one with --from.`);
  }
}

function taken(dataFolder: string): () => void {
  try {
    return takeFolder(dataFolder);
  } catch (error) {
    if ((error as { code?: string }).code !== 'SQLITE_BUSY') throw error;
    throw new KeepFailure(`A server is using ${dataFolder}; stop it first, or restore into another folder with --data.`);
  }
}

function withDatabase<Result>(file: string, use: (database: Database.Database) => Result): Result {
  const database = new Database(file);
  try {
    return use(database);
  } finally {
    database.close();
  }
}

function copyRest(from: string, to: string): void {
  for (const name of readdirSync(from).filter((one) => !NOT_KEPT.test(one))) cpSync(path.join(from, name), path.join(to, name), { recursive: true, preserveTimestamps: true });
}
