import Database from 'libsql';
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { FactLog } from './fact-log.ts';
import { MOUNDS } from './mounds.ts';
import { formatOf } from './schema.ts';
import { FACT_COLUMNS, storedFact, type FactRow } from './stored-fact.ts';

export type OpenedToRead =
  | { readonly kind: 'open'; readonly log: Pick<FactLog, 'id' | 'mounds' | 'read'>; close(): void }
  | { readonly kind: 'failed'; readonly sentence: string };

/** Opens the log of a data folder for reading alone, beside a running server or without one. Damaged facts are passed over. */
export function openToRead(dataFolder: string): OpenedToRead {
  const file = path.join(dataFolder, 'facts.db');
  if (!existsSync(file)) return { kind: 'failed', sentence: `There is no log in ${dataFolder}; give the data folder of a server with --data.` };
  const database = new Database(file, { readonly: true });
  try {
    if (formatOf(database) === 'newest') return { kind: 'open', log: logOver(database), close: () => void database.close() };
    database.close();
    return { kind: 'failed', sentence: `The log in ${file} has another format than this Offpace writes; start the server on it once, or update Offpace.` };
  } catch {
    database.close();
    return { kind: 'failed', sentence: `${file} is damaged or no log of Offpace; put back a copy, or give another folder with --data.` };
  }
}

function logOver(database: Database.Database): Pick<FactLog, 'id' | 'mounds' | 'read'> {
  const selectFacts = database.prepare(`SELECT ${FACT_COLUMNS} FROM facts WHERE mound = ? AND place > ? ORDER BY place`);
  return {
    get id() {
      return (database.prepare('SELECT id FROM log').get() as { id: string }).id;
    },
    mounds: () => (database.prepare(MOUNDS).all() as { mound: string }[]).map(({ mound }) => mound),
    *read(mound, afterPlace) {
      for (const row of selectFacts.iterate(mound, afterPlace) as Iterable<FactRow>) {
        const fact = storedFact(row);
        if (fact !== null) yield fact;
      }
    },
  };
}
