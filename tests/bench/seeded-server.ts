import Database from 'libsql';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Fact } from '../../core/facts/fact.ts';
import { Numbers } from '../../server/log/numbers.ts';
import { growing } from '../../server/log/rows.ts';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { inTransaction } from '../../server/log/transaction.ts';
import { writer } from '../../server/log/write.ts';
import { startServer, type RunningServer } from '../../server/serve.ts';

const BUILT_SCREENS = fileURLToPath(new URL('../../dist/web', import.meta.url));

export interface SeededFolder {
  readonly folder: string;
  remove(): void;
}

/**
 * Writes the logs of mounds into a new data folder, every fact under its own time: by the log's own writer, in one transaction a
 * mound and without waiting for the disk, so that a million take half a minute.
 */
export function seededFolder(logs: Iterable<readonly [mound: string, facts: Iterable<Pick<Fact, 'by' | 'said' | 'atMs'>>]>): SeededFolder {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-bench-'));
  const file = path.join(folder, 'facts.db');
  const opened = openSqliteLog({ file, nowMs: () => 0, newId: () => 'bench', onTrouble: (error) => { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  opened.log.close();
  const database = new Database(file);
  database.pragma('synchronous = OFF');
  // Looks the last place up before each row; places stand one after the other here anyway.
  const { sql } = database.prepare("SELECT sql FROM sqlite_schema WHERE name = 'facts_without_holes'").get() as { sql: string };
  database.exec('DROP TRIGGER facts_without_holes');
  const into = growing(database);
  const write = writer(database, new Numbers(database, into.numbers), into);
  for (const [mound, facts] of logs) {
    inTransaction(database, () => {
      for (const { by, said, atMs } of facts) {
        const { reply } = write.append({ mound, by, said }, atMs);
        if (reply.kind !== 'stored') throw new Error(`A fact of the history was not stored: ${JSON.stringify(reply)}`);
      }
      write.complete();
      into.flush();
      write.stand();
    });
  }
  database.exec(sql);
  database.close();
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** A server over a folder, with the screens that were built. */
export function serverOver(folder: string): Promise<RunningServer> {
  return startServer({ port: 0, host: '127.0.0.1', dataFolder: folder, webFolder: BUILT_SCREENS, logLevel: 'silent' });
}
