import Database from 'libsql';
import path from 'node:path';
import { crc32 } from 'node:zlib';
import { rebuild } from './sweep.ts';
import { inTransaction } from './transaction.ts';
import { closeWhole, removeWhole } from './whole-file.ts';

/**
 * What was worked out from the log and is kept so that a start need not work it out again: of each mound its state at some
 * place, and packs of throws that are put away. Nothing in it is needed: what is missing, damaged or made by another program is
 * worked out anew. It holds what the log says of athletes, so it is erased with them.
 */
export interface ShelfFile {
  /** Null where there is none that can be believed. */
  state(mound: string): Buffer | null;
  keepState(mound: string, bytes: Buffer): void;
  /** Null where it is not what was written. */
  pack(number: number): Buffer | null;
  /** @returns the number under which it is found; never that of another pack */
  keepPack(mound: string, bytes: Buffer): number;
  /** Lets go of the packs of a mound that nothing speaks of any more. */
  dropPacks(mound: string, but: ReadonlySet<number>): void;
  /** All that is written meanwhile is there together or not at all. */
  together(write: () => void): void;
  /** Puts out everything about some mounds, for good, and goes on under another stamp. */
  erase(mounds: readonly string[], stamp: string): void;
  close(): void;
}

const SCHEMA = `
  CREATE TABLE IF NOT EXISTS stamp (stamp TEXT NOT NULL) STRICT;
  CREATE TABLE IF NOT EXISTS states (mound TEXT PRIMARY KEY, checksum INTEGER NOT NULL, bytes BLOB NOT NULL) STRICT;
  CREATE TABLE IF NOT EXISTS packs (pack INTEGER PRIMARY KEY AUTOINCREMENT, mound TEXT NOT NULL, checksum INTEGER NOT NULL, bytes BLOB NOT NULL) STRICT;
  CREATE INDEX IF NOT EXISTS packs_of_mound ON packs (mound);
`;

interface Kept {
  readonly checksum: number;
  readonly bytes: Uint8Array;
}

/**
 * Opens the file, made anew where it is damaged or of another stamp. Where no file can be had it is all kept in memory until the end.
 * @param stamp names the log and the program: of another one nothing is believed
 */
export function openShelf(file: string, stamp: string, onTrouble: (error: unknown) => void): ShelfFile {
  for (const prepare of [() => {}, () => removeWhole(file)]) {
    try {
      prepare();
      return shelfOver(opened(file, stamp));
    } catch (error) {
      if (!(error instanceof OtherStamp)) onTrouble(error);
    }
  }
  return shelfOver(opened(':memory:', stamp));
}

/** Where it is kept, by the file of its log. */
export function shelfBeside(log: string): string {
  return path.join(path.dirname(log), 'ledgers.db');
}

function opened(file: string, stamp: string): Database.Database {
  const database = new Database(file);
  try {
    database.pragma('journal_mode = WAL');
    // After a crash of the machine the newest may be gone; the file is whole.
    database.pragma('synchronous = NORMAL');
    database.pragma('secure_delete = ON');
    database.exec(SCHEMA);
    const found = database.prepare('SELECT stamp FROM stamp').get() as { stamp: string } | undefined;
    if (found === undefined) database.prepare('INSERT INTO stamp VALUES (?)').run(stamp);
    else if (found.stamp !== stamp) throw new OtherStamp();
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Nothing of it is believed, and nothing of it may stay: the other log can be the one from before somebody was erased. */
class OtherStamp extends Error {}

function shelfOver(database: Database.Database): ShelfFile {
  const selectState = database.prepare('SELECT checksum, bytes FROM states WHERE mound = ?');
  const putState = database.prepare('INSERT INTO states VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET checksum = excluded.checksum, bytes = excluded.bytes');
  const selectPack = database.prepare('SELECT checksum, bytes FROM packs WHERE pack = ?');
  const insertPack = database.prepare('INSERT INTO packs (mound, checksum, bytes) VALUES (?, ?, ?)');
  const selectPacks = database.prepare('SELECT pack FROM packs WHERE mound = ?');
  const deletePack = database.prepare('DELETE FROM packs WHERE pack = ?');
  return {
    state: (mound) => whole(selectState.get(mound) as Kept | undefined),
    keepState: (mound, bytes) => void putState.run(mound, crc32(bytes), bytes),
    pack: (number) => whole(selectPack.get(number) as Kept | undefined),
    keepPack: (mound, bytes) => Number(insertPack.run(mound, crc32(bytes), bytes).lastInsertRowid),
    dropPacks(mound, but) {
      const idle = (selectPacks.all(mound) as { pack: number }[]).filter(({ pack }) => !but.has(pack));
      for (const { pack } of idle) deletePack.run(pack);
    },
    together: (write) => (database.inTransaction ? write() : inTransaction(database, write)),
    erase(mounds, stamp) {
      inTransaction(database, () => {
        for (const mound of mounds) for (const table of ['states', 'packs']) database.prepare(`DELETE FROM ${table} WHERE mound = ?`).run(mound);
        database.prepare('UPDATE stamp SET stamp = ?').run(stamp);
      });
      rebuild(database);
    },
    close: () => closeWhole(database),
  };
}

function whole(kept: Kept | undefined): Buffer | null {
  if (kept === undefined) return null;
  const bytes = Buffer.from(kept.bytes.buffer, kept.bytes.byteOffset, kept.bytes.byteLength);
  return crc32(bytes) === kept.checksum ? bytes : null;
}
