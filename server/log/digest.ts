import type { Database } from 'libsql';
import { createHash } from 'node:crypto';

/** What a log holds, in few words. */
export interface Holding {
  readonly log: string;
  readonly facts: number;
  readonly mounds: number;
  /** SHA-256 of every table and every row, in the order of their keys: two files with the same one hold the same. */
  readonly digest: string;
}

export function holdingOf(database: Database): Holding {
  const { log, facts, mounds } = database.prepare('SELECT (SELECT id FROM log) AS log, count(*) AS facts, count(DISTINCT mound) AS mounds FROM facts').get() as Omit<Holding, 'digest'>;
  return { log, facts, mounds, digest: digestOf(database) };
}

function digestOf(database: Database): string {
  const hash = createHash('sha256');
  const tables = database.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name").all() as { name: string; sql: string }[];
  for (const { name, sql } of tables) {
    hash.update(`${sql}\n`);
    for (const row of database.prepare(`SELECT * FROM "${name}"`).raw(true).iterate()) hash.update(`${JSON.stringify(row)}\n`);
  }
  return hash.digest('hex');
}
