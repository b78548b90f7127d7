import path from 'node:path';
import Database from 'libsql';
import { expect, test } from 'vitest';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { startWriting, Together, type Trouble, type Writing } from '../../../server/log/writing.ts';
import { folderForTest } from '../folder.ts';

/** The file of an empty log, closed. */
function emptyLog(): string {
  const file = path.join(folderForTest(), 'facts.db');
  const opened = openSqliteLog({ file, nowMs: () => 0, newId: () => 'log-1', onTrouble: (error) => { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  opened.log.close();
  return file;
}

/** A thread on a file that is open here too, as it is in the server. */
function writingTo(file: string, largestPages: number | null = null): { readonly writing: Writing; readonly database: Database.Database; close(): void } {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  const writing = startWriting({ file, largestPages, pagesBeside: 1000 });
  return {
    writing, database,
    close() {
      writing.close();
      database.close();
    },
  };
}

const fact = (place: number, words = 'words') => ['north-1', place, 0, 'coach', 1, JSON.stringify({ words }), 1] as const;

function rows(...facts: readonly (ReturnType<typeof fact>)[]) {
  const together = new Together();
  for (const one of facts) together.facts.add(...one);
  return together.take();
}

const written = (writing: Writing, tables: ReturnType<typeof rows>): Promise<Trouble | null> => new Promise((resolve) => writing.write(tables, resolve));
const places = (database: Database.Database): number[] => (database.prepare('SELECT place FROM facts ORDER BY entry').all() as { place: number }[]).map(({ place }) => place);

test('what is given to the thread is in the file once it says so, in the order in which it was given', async () => {
  const { writing, database, close } = writingTo(emptyLog());
  const many = Array.from({ length: 50 }, (_, index) => fact(index + 1));
  expect(await Promise.all([written(writing, rows(...many)), written(writing, rows(fact(51), fact(52))), written(writing, rows())])).toEqual([null, null, null]);
  expect(places(database)).toEqual(Array.from({ length: 52 }, (_, index) => index + 1));
  close();
});

test('who waits for it has heard of the oldest group when the wait is over', () => {
  const { writing, database, close } = writingTo(emptyLog());
  const told: number[] = [];
  writing.write(rows(fact(1)), () => told.push(1));
  writing.write(rows(fact(2)), () => told.push(2));
  writing.wait();
  expect(told[0]).toBe(1);
  if (told.length === 1) writing.wait();
  expect(told).toEqual([1, 2]);
  expect(places(database)).toEqual([1, 2]);
  writing.wait();
  close();
});

test('a group that cannot be written leaves nothing, nor do those behind it until all of them have ended', async () => {
  const { writing, database, close } = writingTo(emptyLog());
  const ends = await Promise.all([rows(fact(1)), rows(fact(2), fact(9)), rows(fact(3)), rows()].map((tables) => written(writing, tables)));
  expect(ends.map((end) => end?.why ?? null)).toEqual([null, 'itself', 'behind-another', 'behind-another']);
  expect(ends[1]!.error.message).toContain('next place');
  expect(places(database)).toEqual([1]);
  expect(await written(writing, rows(fact(2)))).toBeNull();
  expect(places(database)).toEqual([1, 2]);
  close();
});

test('where the file is full the error says so by its code', async () => {
  const file = emptyLog();
  const pages = (new Database(file).pragma('page_count') as [{ page_count: number }])[0].page_count;
  const { writing, database, close } = writingTo(file, pages + 2);
  const end = await written(writing, rows(fact(1, 'long'.repeat(20_000))));
  expect(end?.why).toBe('itself');
  expect(end?.error).toMatchObject({ code: 'SQLITE_FULL' });
  expect(await written(writing, rows(fact(1)))).toBeNull();
  expect(places(database)).toEqual([1]);
  close();
});

test('where the thread cannot open the file every write fails, and it can be closed', async () => {
  const writing = startWriting({ file: path.join(folderForTest(), 'nowhere', 'facts.db'), largestPages: null, pagesBeside: 1000 });
  expect((await written(writing, rows(fact(1))))?.why).toBe('itself');
  expect((await written(writing, rows(fact(1))))?.why).toBe('itself');
  writing.close();
});
