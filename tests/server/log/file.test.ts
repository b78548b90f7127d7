import Database from 'libsql';
import { chmodSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openSqliteLog, type LogOptions } from '../../../server/log/sqlite-log.ts';
import { folderForTest } from '../folder.ts';
import { measured, path as pathBody } from '../frames.ts';

const NOW_MS = 1_700_000_000_000;

function options(file: string, more: Partial<LogOptions> = {}): LogOptions {
  return { file, nowMs: () => NOW_MS, newId: () => 'log-a', onTrouble: () => {}, ...more };
}

function openLog(file: string, more: Partial<LogOptions> = {}) {
  const opened = openSqliteLog(options(file, more));
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  return opened.log;
}

const entry = (sequence: number) => ({ mound: 'north-1', by: 'device:eye-1', said: measured(sequence, pathBody()) });

test('throws that arrive together share one commit', async () => {
  const file = path.join(folderForTest(), 'facts.db');
  const times: number[] = [];
  let now = NOW_MS;
  const log = openLog(file, { nowMs: () => now++ });
  log.onAppended(({ atMs }) => times.push(atMs));
  await Promise.all(Array.from({ length: 50 }, (_, index) => log.append(entry(index + 1))));
  await log.append(entry(51));
  expect(new Set(times.slice(0, 50)).size).toBe(1);
  expect(times[50]).toBeGreaterThan(times[49]!);
});

test('a second server on the same folder is turned away with a sentence, and the first goes on', async () => {
  const file = path.join(folderForTest(), 'facts.db');
  const log = openLog(file);
  const second = openSqliteLog(options(file));
  expect(second).toEqual({ kind: 'failed', sentence: `Another Offpace is using ${path.dirname(file)}; stop that one, or give another folder with --data.` });
  expect(await log.append(entry(1))).toMatchObject({ kind: 'stored' });
});

test('a folder can be opened again as soon as its log was closed', () => {
  const file = path.join(folderForTest(), 'facts.db');
  for (let round = 0; round < 3; round += 1) openLog(file).close();
  expect(statSync(file).size).toBeGreaterThan(0);
});

test('a full disk acknowledges nothing, keeps what was stored, and takes throws again once there is room', async () => {
  const file = path.join(folderForTest(), 'facts.db');
  const troubles: unknown[] = [];
  const log = openLog(file, { largestPages: 40, onTrouble: (error) => troubles.push(error) });
  const replies = [];
  for (let sequence = 1; sequence <= 60; sequence += 1) replies.push(await log.append(entry(sequence)));
  const stored = replies.filter(({ kind }) => kind === 'stored').length;
  expect(stored).toBeGreaterThan(5);
  expect(stored).toBeLessThan(60);
  expect(replies.at(-1)).toEqual({ kind: 'failed', sentence: 'Nothing was stored because the disk of the server is full; make room, then send it again.' });
  expect(troubles).toHaveLength(60 - stored);
  expect([...log.read('north-1', 0)]).toHaveLength(stored);
  log.close();
  const roomy = openLog(file);
  expect(await roomy.append(entry(60))).toMatchObject({ kind: 'stored', place: stored + 1 });
  expect(roomy.settled('eye-1', 'run-a').through).toBe(stored);
});

test('one write that cannot be stored does not take the others of its commit with it', async () => {
  const log = openLog(path.join(folderForTest(), 'facts.db'));
  const unwritable = { ...entry(2), by: null as unknown as string };
  const replies = await Promise.all([log.append(entry(1)), log.append(unwritable), log.append(entry(3))]);
  expect(replies.map(({ kind }) => kind)).toEqual(['stored', 'failed', 'stored']);
  expect([...log.read('north-1', 0)].map(({ place }) => place)).toEqual([1, 2]);
});

test('a listener that fails neither undoes a stored throw nor keeps others from hearing of it', async () => {
  const troubles: unknown[] = [];
  const log = openLog(path.join(folderForTest(), 'facts.db'), { onTrouble: (error) => troubles.push(error) });
  const heard: number[] = [];
  log.onAppended(() => { throw new Error('a broken listener'); });
  log.onAppended(({ place }) => heard.push(place));
  expect(await log.append(entry(1))).toMatchObject({ kind: 'stored', again: false });
  expect([heard, troubles.length]).toEqual([[1], 1]);
});

test('a file of a newer schema is refused in one sentence and left as it was', () => {
  const file = path.join(folderForTest(), 'facts.db');
  openLog(file).close();
  const newer = new Database(file);
  newer.prepare('INSERT INTO schema_versions VALUES (99, 0)').run();
  newer.close();
  const refused = { kind: 'failed', sentence: `The log in ${file} was written by a newer Offpace (format 99); update Offpace, or give another folder with --data.` };
  expect(openSqliteLog(options(file))).toEqual(refused);
  expect(openSqliteLog(options(file))).toEqual(refused);
});

test.each([
  ['UPDATE facts SET said = \'{}\'', 'append-only'],
  ['DELETE FROM facts', 'append-only'],
  ['INSERT INTO facts (mound, place, at_ms, said_by, version, said) VALUES (\'north-1\', 9, 0, \'coach\', 1, \'{}\')', 'next place'],
  ['DELETE FROM numbers', 'settled'],
  ['UPDATE numbers SET place = 5', 'settled'],
])('the file itself refuses %s', async (sql, reason) => {
  const file = path.join(folderForTest(), 'facts.db');
  const log = openLog(file);
  await log.append(entry(1));
  log.close();
  const database = new Database(file);
  onTestFinished(() => { database.close(); });
  expect(() => database.exec(sql)).toThrow(reason);
});

test('a log with a hole is not served', async () => {
  const file = path.join(folderForTest(), 'facts.db');
  const log = openLog(file);
  for (const sequence of [1, 2, 3]) await log.append(entry(sequence));
  log.close();
  const database = new Database(file);
  database.exec('DROP TRIGGER facts_never_go; DELETE FROM facts WHERE place = 2');
  database.close();
  expect(openSqliteLog(options(file))).toMatchObject({ kind: 'failed', sentence: expect.stringContaining('The log of north-1') });
});

test('a file that is no log, and a folder that is none, are each told in a sentence', () => {
  const folder = folderForTest();
  const file = path.join(folder, 'facts.db');
  writeFileSync(file, 'dear diary '.repeat(1000));
  expect(openSqliteLog(options(file))).toEqual({ kind: 'failed', sentence: `${file} is damaged or no log of Offpace; put back a copy, or give another folder with --data.` });
  expect(openSqliteLog(options(path.join(file, 'deeper', 'facts.db')))).toMatchObject({ kind: 'failed', sentence: expect.stringContaining('is not a folder') });
  mkdirSync(path.join(folder, 'taken.db'));
  expect(openSqliteLog(options(path.join(folder, 'taken.db')))).toMatchObject({ kind: 'failed', sentence: expect.stringContaining('cannot be opened') });
});

test('a log that was closed leaves one plain file, whatever else has just been closed with it', () => {
  for (let time = 0; time < 20; time += 1) {
    const folder = folderForTest();
    openLog(path.join(folder, 'facts.db')).close();
    expect(readdirSync(folder).filter((name) => name.startsWith('facts.db'))).toEqual(['facts.db']);
  }
});

test('a folder that this account may not write in is one sentence', () => {
  const folder = folderForTest();
  const file = path.join(folder, 'facts.db');
  openLog(file).close();
  chmodSync(folder, 0o555);
  const refused = asNobody(() => openSqliteLog(options(file)));
  expect(refused).toEqual({ kind: 'failed', sentence: `This account may not write in ${folder}; change that, or give another folder with --data.` });
  chmodSync(folder, 0o755);
  expect(openLog(file).id).toBe('log-a');
});

/** Root may write everywhere, so what root runs is done here as the account that owns nothing. */
function asNobody<Result>(act: () => Result): Result {
  if (process.geteuid?.() !== 0) return act();
  process.seteuid!(65_534);
  try {
    return act();
  } finally {
    process.seteuid!(0);
  }
}
