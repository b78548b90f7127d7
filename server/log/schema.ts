import type { Database } from 'libsql';
import { upgradeFacts, type FactUpgrade } from './upgrade-facts.ts';
import { inTransaction } from './transaction.ts';

export interface Migration {
  readonly version: number;
  readonly sql: string;
  /** Where what facts say has a new form too. */
  readonly facts?: FactUpgrade;
}

/** Numbered steps from an empty file to the newest schema. A published step is never edited: the next one mends it. */
export const MIGRATIONS: readonly Migration[] = [
  {
    version: 1,
    sql: `
      CREATE TABLE log (
        only_one INTEGER PRIMARY KEY CHECK (only_one = 1),
        id TEXT NOT NULL,
        created_at_ms INTEGER NOT NULL
      ) STRICT;

      -- "entry" is the order of writing over all mounds; "place" is the order in one mound's log.
      CREATE TABLE facts (
        entry INTEGER PRIMARY KEY,
        mound TEXT NOT NULL,
        place INTEGER NOT NULL,
        at_ms INTEGER NOT NULL,
        said_by TEXT NOT NULL,
        version INTEGER NOT NULL,
        said TEXT NOT NULL,
        UNIQUE (mound, place)
      ) STRICT;
      CREATE TRIGGER facts_without_holes BEFORE INSERT ON facts
        WHEN NEW.place <> (SELECT coalesce(max(place), 0) + 1 FROM facts WHERE mound = NEW.mound)
        BEGIN SELECT RAISE(ABORT, 'a fact takes the next place of its mound'); END;
      CREATE TRIGGER facts_never_change BEFORE UPDATE ON facts BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
      CREATE TRIGGER facts_never_go BEFORE DELETE ON facts BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;

      -- Numbers of devices that came to an end: stored (with a place) or finally refused (without).
      CREATE TABLE numbers (
        device TEXT NOT NULL,
        run TEXT NOT NULL,
        sequence INTEGER NOT NULL,
        kind TEXT NOT NULL,
        fingerprint TEXT,
        mound TEXT,
        place INTEGER,
        PRIMARY KEY (device, run, sequence),
        CHECK ((kind = 'refused') = (place IS NULL))
      ) STRICT, WITHOUT ROWID;
      CREATE TRIGGER numbers_never_change BEFORE UPDATE ON numbers BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;
      CREATE TRIGGER numbers_never_go BEFORE DELETE ON numbers BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;

      CREATE TABLE requests (
        request TEXT PRIMARY KEY,
        fingerprint TEXT NOT NULL,
        mound TEXT NOT NULL,
        place INTEGER NOT NULL
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE refusals (
        entry INTEGER PRIMARY KEY,
        at_ms INTEGER NOT NULL,
        mound TEXT,
        device TEXT,
        run TEXT,
        sequence INTEGER,
        code TEXT NOT NULL,
        path TEXT NOT NULL,
        sentence TEXT NOT NULL,
        frame TEXT
      ) STRICT;
      CREATE INDEX refusals_by_code ON refusals (code);
    `,
  },
  {
    // A repeated frame is held against the stored fact itself, so fingerprints went; each fact got a checksum; numbers
    // that followed each other to following places became one row, because a commit pays for every row.
    version: 2,
    sql: `
      ALTER TABLE facts ADD COLUMN checksum INTEGER;

      ALTER TABLE numbers RENAME TO single_numbers;
      CREATE TABLE numbers (
        device TEXT NOT NULL,
        run TEXT NOT NULL,
        first INTEGER NOT NULL,
        last INTEGER NOT NULL CHECK (last >= first),
        kind TEXT NOT NULL,
        mound TEXT,
        place INTEGER,
        PRIMARY KEY (device, run, first),
        CHECK ((kind = 'refused') = (place IS NULL))
      ) STRICT, WITHOUT ROWID;
      INSERT INTO numbers
        SELECT device, run, min(sequence), max(sequence), kind, mound, min(place)
        FROM (SELECT *, sequence - row_number() OVER (PARTITION BY device, run, kind, mound, place - sequence ORDER BY sequence) AS stretch FROM single_numbers)
        GROUP BY device, run, kind, mound, place - sequence, stretch;
      DROP TABLE single_numbers;
      CREATE TRIGGER numbers_only_grow BEFORE UPDATE ON numbers
        WHEN NEW.last < OLD.last OR (NEW.device, NEW.run, NEW.first, NEW.kind, NEW.mound, NEW.place) IS NOT (OLD.device, OLD.run, OLD.first, OLD.kind, OLD.mound, OLD.place)
        BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;
      CREATE TRIGGER numbers_never_go BEFORE DELETE ON numbers BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;
    `,
  },
];

export type Format = 'empty' | 'older' | 'newest' | { readonly newer: number };

/** How a file stands to the newest step. */
export function formatOf(database: Database, migrations: readonly Migration[] = MIGRATIONS): Format {
  const have = versionOf(database);
  const newest = migrations.at(-1)?.version ?? 0;
  if (have > newest) return { newer: have };
  return have === newest ? 'newest' : have === 0 ? 'empty' : 'older';
}

/** Brings a file to the newest step, in one transaction: whoever is stopped in the middle finds the file as it was. */
export function migrate(database: Database, nowMs: number, migrations: readonly Migration[] = MIGRATIONS): void {
  const have = versionOf(database);
  const due = migrations.filter((step) => step.version > have);
  if (due.length === 0) return;
  inTransaction(database, () => {
    database.exec('CREATE TABLE IF NOT EXISTS schema_versions (version INTEGER PRIMARY KEY, applied_at_ms INTEGER NOT NULL) STRICT');
    for (const { version, sql } of due) {
      database.exec(sql);
      database.prepare('INSERT INTO schema_versions VALUES (?, ?)').run(version, nowMs);
    }
    upgradeFacts(database, migrations.flatMap(({ facts }) => facts ?? []));
  });
}

function versionOf(database: Database): number {
  if (database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'schema_versions'").get() === undefined) return 0;
  return (database.prepare('SELECT coalesce(max(version), 0) AS version FROM schema_versions').get() as { version: number }).version;
}
