import Database from 'libsql';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { FACT_VERSION } from '../../../core/facts/fact.ts';
import { migrate, MIGRATIONS, type Migration } from '../../../server/log/schema.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { folderForTest } from '../folder.ts';
import { corrected, measured, summary } from '../frames.ts';
import { NO_FACT, OLD_LINES, writeFormat1 } from './format-1.ts';

const NEWEST = MIGRATIONS.at(-1)!.version;

function oldFile(): string {
  const file = path.join(folderForTest(), 'facts.db');
  writeFormat1(file);
  return file;
}

function openLog(file: string) {
  const troubles: string[] = [];
  const opened = openSqliteLog({ file, nowMs: () => 1_800_000_000_000, newId: () => 'a-new-id', onTrouble: (error) => troubles.push((error as Error).message) });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  return { ...opened, troubles };
}

function openFile(file: string): Database.Database {
  const database = new Database(file);
  onTestFinished(() => { database.close(); });
  return database;
}

const rowsOf = (database: Database.Database): unknown[] => database.prepare('SELECT mound, place, at_ms, said_by, version, said FROM facts ORDER BY entry').all();
const linesOf = (mound: string) => OLD_LINES.filter((line) => line.mound === mound);

test('a log of the first format opens with every fact it held, word for word, under the same id', () => {
  const { log } = openLog(oldFile());
  expect(log.id).toBe('an-old-log');
  expect(log.mounds()).toEqual(['north-1', 'south-2']);
  for (const mound of log.mounds()) {
    const expected = linesOf(mound).map(({ by, said }, index) => ({ place: index + 1, by, said })).filter(({ said }) => said !== NO_FACT);
    expect([...log.read(mound, 0)].map(({ place, by, said }) => ({ place, by, said }))).toEqual(expected);
  }
});

test('what no door would have let in is said once, kept as it was, and passed over', () => {
  const file = oldFile();
  const { log, troubles } = openLog(file);
  for (let time = 0; time < 2; time += 1) expect([...log.read('north-1', 0)].map(({ place }) => place)).toEqual([1, 2, 3, 5, 6, 7, 8, 9]);
  expect(log.damaged()).toEqual([{ mound: 'north-1', place: 4 }]);
  expect(troubles).toEqual(['The fact at place 4 of north-1 is damaged; it is kept as it is and passed over. A backup may hold it whole.']);
  log.close();
  expect(rowsOf(openFile(file))[4]).toMatchObject({ place: 4, said: NO_FACT });
});

test('numbers of an older log stay settled: repeats are answered, others refused, gaps still open', async () => {
  const { log } = openLog(oldFile());
  const append = (said: ReturnType<typeof measured>) => log.append({ mound: 'north-1', by: 'device:eye-1', said });
  expect(log.settled('eye-1', 'run-a')).toEqual({ through: 6, gaps: [[7, 7]] });
  expect(log.settled('eye-2', 'run-a')).toEqual({ through: 2, gaps: [] });
  expect(await append(measured(4, summary(86)))).toEqual({ kind: 'stored', mound: 'north-1', place: 5, again: true });
  expect(await append(corrected(6, 5))).toEqual({ kind: 'stored', mound: 'north-1', place: 7, again: true });
  expect(await append(measured(9, summary(50)))).toMatchObject({ kind: 'conflict', code: 'body-differs' });
  expect(await append(measured(3))).toMatchObject({ kind: 'conflict', code: 'refused-before' });
  expect(await append(measured(7))).toEqual({ kind: 'stored', mound: 'north-1', place: 10, again: false });
  expect(log.settled('eye-1', 'run-a')).toEqual({ through: 9, gaps: [] });
});

test('a copy as it was is kept before the upgrade, once, and an Offpace of its time could go on with it', () => {
  const file = oldFile();
  const before = rowsOf(openFile(file));
  const { log, keptCopy } = openLog(file);
  log.close();
  expect(keptCopy).toBe(path.join(path.dirname(file), 'backups', `facts-before-format-${NEWEST}.db`));
  const copy = openFile(keptCopy!);
  expect(rowsOf(copy)).toEqual(before);
  expect(copy.prepare('SELECT max(version) AS version FROM schema_versions').get()).toMatchObject({ version: 1 });
  expect(copy.prepare('SELECT count(*) AS count FROM numbers').get()).toMatchObject({ count: 10 });
  expect(openLog(file).keptCopy).toBeNull();
  expect(readdirSync(path.dirname(keptCopy!))).toHaveLength(1);
});

test('a new log is made in the newest format, and no copy of nothing is kept', () => {
  const file = path.join(folderForTest(), 'facts.db');
  expect(openLog(file).keptCopy).toBeNull();
  expect(readdirSync(path.dirname(file))).not.toContain('backups');
});

test('a step that fails leaves the file as it was, to the steps before it', () => {
  const file = oldFile();
  const database = openFile(file);
  const before = rowsOf(database);
  const broken: Migration = { version: NEWEST + 1, sql: 'CREATE TABLE half (a INTEGER); CREATE TABLE half (a INTEGER)' };
  expect(() => migrate(database, 10, [...MIGRATIONS, broken])).toThrow(/already exists/);
  expect(rowsOf(database)).toEqual(before);
  expect(database.prepare('SELECT version FROM schema_versions').all()).toMatchObject([{ version: 1 }]);
});

test('a step with a new form of facts brings each of them up by its own version, and seals it anew', () => {
  const file = oldFile();
  const later: Migration[] = [
    { version: NEWEST + 1, sql: '', facts: { version: FACT_VERSION + 1, upgrade: (said) => ({ ...(said as object), once: true }) } },
    { version: NEWEST + 2, sql: '', facts: { version: FACT_VERSION + 2, upgrade: (said) => withoutOnce(said as { once?: true }) } },
  ];
  const database = openFile(file);
  migrate(database, 10, [...MIGRATIONS, ...later]);
  const rows = database.prepare('SELECT version, said, checksum FROM facts ORDER BY entry').all() as { version: number; said: string; checksum: number | null }[];
  rows.forEach(({ version, said, checksum }, index) => {
    const expected = OLD_LINES[index]!.said;
    if (expected === NO_FACT) expect([version, said, checksum]).toEqual([FACT_VERSION, NO_FACT, null]);
    else expect([version, JSON.parse(said), typeof checksum]).toEqual([FACT_VERSION + 2, expected, 'number']);
  });
});

test('the newest format holds facts of the version that is written', () => {
  expect(MIGRATIONS.findLast(({ facts }) => facts !== undefined)?.facts?.version ?? 1).toBe(FACT_VERSION);
});

test('a fact whose text was changed on the disk is not taken for a fact', async () => {
  const file = path.join(folderForTest(), 'facts.db');
  const { log } = openLog(file);
  for (const sequence of [1, 2, 3]) await log.append({ mound: 'north-1', by: 'device:eye-1', said: measured(sequence) });
  log.close();
  openFile(file).exec("DROP TRIGGER facts_never_change; UPDATE facts SET said = replace(said, '84.5', '48.5') WHERE place = 2");
  const { log: again, troubles } = openLog(file);
  expect([...again.read('north-1', 0)].map(({ place }) => place)).toEqual([1, 3]);
  expect(troubles).toHaveLength(1);
  expect(await again.append({ mound: 'north-1', by: 'device:eye-1', said: measured(2) })).toMatchObject({ kind: 'stored', place: 2, again: true });
});

/** Only what went through the step before comes out whole. */
function withoutOnce({ once, ...said }: { readonly once?: true }): unknown {
  return once === true ? said : { kind: 'lost' };
}
