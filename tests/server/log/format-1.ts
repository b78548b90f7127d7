import Database from 'libsql';
import { createHash } from 'node:crypto';
import type { Fact } from '../../../core/facts/fact.ts';
import { corrected, measured, opened, summary } from '../frames.ts';

/** The first format of a log, word for word as it was published. */
const FORMAT_1 = `
  CREATE TABLE schema_versions (version INTEGER PRIMARY KEY, applied_at_ms INTEGER NOT NULL) STRICT;
  INSERT INTO schema_versions VALUES (1, 1699999999000);
  CREATE TABLE log (only_one INTEGER PRIMARY KEY CHECK (only_one = 1), id TEXT NOT NULL, created_at_ms INTEGER NOT NULL) STRICT;
  INSERT INTO log VALUES (1, 'an-old-log', 1699999999000);
  CREATE TABLE facts (
    entry INTEGER PRIMARY KEY, mound TEXT NOT NULL, place INTEGER NOT NULL, at_ms INTEGER NOT NULL, said_by TEXT NOT NULL,
    version INTEGER NOT NULL, said TEXT NOT NULL, UNIQUE (mound, place)
  ) STRICT;
  CREATE TRIGGER facts_without_holes BEFORE INSERT ON facts
    WHEN NEW.place <> (SELECT coalesce(max(place), 0) + 1 FROM facts WHERE mound = NEW.mound)
    BEGIN SELECT RAISE(ABORT, 'a fact takes the next place of its mound'); END;
  CREATE TRIGGER facts_never_change BEFORE UPDATE ON facts BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
  CREATE TRIGGER facts_never_go BEFORE DELETE ON facts BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
  CREATE TABLE numbers (
    device TEXT NOT NULL, run TEXT NOT NULL, sequence INTEGER NOT NULL, kind TEXT NOT NULL, fingerprint TEXT, mound TEXT, place INTEGER,
    PRIMARY KEY (device, run, sequence), CHECK ((kind = 'refused') = (place IS NULL))
  ) STRICT, WITHOUT ROWID;
  CREATE TRIGGER numbers_never_change BEFORE UPDATE ON numbers BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;
  CREATE TRIGGER numbers_never_go BEFORE DELETE ON numbers BEGIN SELECT RAISE(ABORT, 'a settled number stays settled'); END;
  CREATE TABLE requests (request TEXT PRIMARY KEY, fingerprint TEXT NOT NULL, mound TEXT NOT NULL, place INTEGER NOT NULL) STRICT, WITHOUT ROWID;
  CREATE TABLE refusals (
    entry INTEGER PRIMARY KEY, at_ms INTEGER NOT NULL, mound TEXT, device TEXT, run TEXT, sequence INTEGER, code TEXT NOT NULL,
    path TEXT NOT NULL, sentence TEXT NOT NULL, frame TEXT
  ) STRICT;
  CREATE INDEX refusals_by_code ON refusals (code);
`;

/** Says that a row is no fact: the device was switched off while it spoke, and an early Offpace believed it. */
export const NO_FACT = '{"kind":"throw-measured","source":{"device":"eye-1"';

interface Line {
  readonly mound: string;
  readonly by: string;
  readonly said: Fact['said'] | typeof NO_FACT;
}

const onMound = (mound: string, device: string) => (said: Fact['said']): Line => ({ mound, by: `device:${device}`, said });
const north = onMound('north-1', 'eye-1');
const south = onMound('south-2', 'eye-2');

/** Two mounds in turn; number 3 was refused, 7 never came, 8 and 9 did, one row is damaged. */
export const OLD_LINES: readonly Line[] = [
  { mound: 'north-1', by: 'coach', said: opened() },
  north(measured(1)),
  south(measured(1, summary(70), { device: 'eye-2' })),
  north(measured(2, summary(85))),
  { mound: 'north-1', by: 'device:eye-1', said: NO_FACT },
  north(measured(4, summary(86))),
  south(measured(2, summary(71), { device: 'eye-2' })),
  north(measured(5, summary(87))),
  north(corrected(6, 5)),
  north(measured(8, summary(88))),
  north(measured(9, summary(89))),
];

/** Writes a log in the first format. `more` throws of a third device are added behind the lines above. */
export function writeFormat1(file: string, more = 0): void {
  const database = new Database(file);
  database.exec(FORMAT_1);
  database.exec('BEGIN');
  const insertFact = database.prepare('INSERT INTO facts (mound, place, at_ms, said_by, version, said) VALUES (?, ?, ?, ?, 1, ?)');
  const insertNumber = database.prepare('INSERT INTO numbers VALUES (?, ?, ?, ?, ?, ?, ?)');
  const places = new Map<string, number>();
  const lines = [...OLD_LINES, ...Array.from({ length: more }, (_, index) => onMound('west-3', 'eye-3')(measured(index + 1, summary(60 + (index % 30)), { device: 'eye-3' })))];
  lines.forEach(({ mound, by, said }, index) => {
    const place = (places.get(mound) ?? 0) + 1;
    places.set(mound, place);
    insertFact.run(mound, place, 1_700_000_000_000 + index, by, typeof said === 'string' ? said : JSON.stringify(said));
    if (typeof said === 'string' || (said.kind !== 'throw-measured' && said.kind !== 'throw-corrected')) return;
    const { device, run, sequence } = said.source;
    insertNumber.run(device, run, sequence, said.kind, createHash('sha256').update(JSON.stringify(said)).digest('hex'), mound, place);
  });
  insertNumber.run('eye-1', 'run-a', 3, 'refused', null, null, null);
  database.exec('COMMIT');
  database.close();
}
