import type { Database } from 'libsql';
import { saidSchema } from '../../core/facts/fact.ts';
import { whileFactsChange } from './facts-changing.ts';
import { checksumOf, type FactRow } from './stored-fact.ts';

/** Brings what one fact says from the version before to this one. */
export interface FactUpgrade {
  readonly version: number;
  upgrade(said: unknown): unknown;
}

type Row = Omit<FactRow, 'checksum'> & { readonly entry: number };

/**
 * Brings every fact to the newest version, holds it against the schemas and gives it its checksum, inside the caller's
 * transaction. What no door would have let in gets none: it is kept as it was, and passed over on reading.
 */
export function upgradeFacts(database: Database, upgrades: readonly FactUpgrade[]): void {
  const update = database.prepare('UPDATE facts SET said = ?, version = ?, checksum = ? WHERE entry = ?');
  whileFactsChange(database, () => {
    for (const row of rowsOf(database)) {
      const { said, version } = upgraded(row, upgrades);
      update.run(said, version, isFact(said) ? checksumOf({ ...row, said, version }) : null, row.entry);
    }
  });
}

function* rowsOf(database: Database): Iterable<Row> {
  const select = database.prepare('SELECT entry, mound, place, at_ms, said_by, version, said FROM facts WHERE entry > ? ORDER BY entry LIMIT 1000');
  for (let last = 0; ;) {
    const rows = select.all(last) as Row[];
    if (rows.length === 0) return;
    yield* rows;
    last = rows.at(-1)!.entry;
  }
}

function upgraded({ said, version }: Row, upgrades: readonly FactUpgrade[]): Pick<FactRow, 'said' | 'version'> {
  const due = upgrades.filter((step) => step.version > version);
  if (due.length === 0) return { said, version };
  try {
    return { said: JSON.stringify(due.reduce((before, step) => step.upgrade(before), JSON.parse(said) as unknown)), version: due.at(-1)!.version };
  } catch {
    return { said, version };
  }
}

function isFact(text: string): boolean {
  try {
    return saidSchema.safeParse(JSON.parse(text)).success;
  } catch {
    return false;
  }
}
