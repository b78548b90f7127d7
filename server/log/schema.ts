import type { Database } from 'libsql';
import { inTransaction } from './transaction.ts';

interface Migration {
  readonly version: number;
  readonly sql: string;
}

/** Numbered steps from an empty file to the newest schema. A published step is never edited: the next one mends it. */
const MIGRATIONS: readonly Migration[] = [
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
];

/**
 * Brings a file to the newest schema, one transaction a step.
 * @returns null, or the version of a file that is newer than the newest step: then nothing was touched.
 */
export function migrate(database: Database, nowMs: number, migrations: readonly Migration[] = MIGRATIONS): number | null {
  database.exec('CREATE TABLE IF NOT EXISTS schema_versions (version INTEGER PRIMARY KEY, applied_at_ms INTEGER NOT NULL) STRICT');
  const { version: have } = database.prepare('SELECT coalesce(max(version), 0) AS version FROM schema_versions').get() as { version: number };
  if (have > (migrations.at(-1)?.version ?? 0)) return have;
  for (const { version, sql } of migrations.filter((step) => step.version > have)) {
    inTransaction(database, () => {
      database.exec(sql);
      database.prepare('INSERT INTO schema_versions VALUES (?, ?)').run(version, nowMs);
    });
  }
  return null;
}
