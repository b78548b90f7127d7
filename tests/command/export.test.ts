import { appendFileSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ledgersIn } from '../../command/recorded.ts';
import { DeviceClient } from '../server/device-client.ts';
import { folderForTest } from '../server/folder.ts';
import { ATHLETE, opened, summary } from '../server/frames.ts';
import { serverForTest, type TestServer } from '../server/running.ts';
import { ScreenClient } from '../server/screen-client.ts';
import { typed } from './typed.ts';

const THROWS = 4;

async function recorded(): Promise<TestServer> {
  const server = await serverForTest();
  await new ScreenClient(server).say(opened());
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (let sequence = 1; sequence <= THROWS; sequence += 1) await client.ask({ kind: 'throw', sequence, time: 1000 * sequence, body: summary(80 + sequence) });
  return server;
}

test('throws go out as a table, beside a running server, to standard output or into a file', async () => {
  const { dataFolder: data } = await recorded();
  const { code, out, err } = await typed('export', '--session', 's-1', '--data', data);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const [header, ...rows] = out.trim().split(/\r?\n/);
  expect(header).toContain('speed_mph');
  expect(rows).toHaveLength(THROWS);
  const file = path.join(folderForTest(), 'some.csv');
  const coded = await typed('export', '--session', 's-1', '--throws', '2-3', '--no-names', '--data', data, '--file', file, '--json');
  expect(JSON.parse(coded.out)).toEqual({ file, format: 'csv', rows: 2 });
  expect(readFileSync(file, 'utf8')).not.toMatch(/Ana|ana-1|s-1/);
  expect((await typed('export', '--data', data, '--file', file)).err).toBe(`${file} is already there; give another name with --file.\n`);
});

test('facts go out and come back into an empty folder, where the log then says the same', async () => {
  const { dataFolder: data } = await recorded();
  const [file, again] = [path.join(folderForTest(), 'facts.jsonl'), path.join(folderForTest(), 'again')];
  expect((await typed('export', '--format', 'jsonl', '--data', data, '--file', file)).err).toBe(`${THROWS + 1} facts are in ${file}. It names athletes: keep it as private as the data folder.\n`);
  expect(await typed('import', file, '--data', again, '--json')).toEqual({ code: 0, err: '', out: `${JSON.stringify({ folder: again, facts: THROWS + 1, mounds: 1 })}\n` });
  expect(ledgersIn(again)).toEqual(ledgersIn(data));
  expect((await typed('import', file, '--data', again)).err).toContain('holds facts already');
  expect((await typed('import', file, '--data', data)).err).toBe(`Another Offpace is using ${data}; stop that one, or give another folder with --data.\n`);
});

test('of a file in which one line is wrong nothing is imported, and the line is named', async () => {
  const { dataFolder: data } = await recorded();
  const [file, again] = [path.join(folderForTest(), 'facts.jsonl'), path.join(folderForTest(), 'again')];
  await typed('export', '--format', 'jsonl', '--data', data, '--file', file);
  appendFileSync(file, '{"place":0}\n');
  const { code, err } = await typed('import', file, '--data', again);
  expect(code).toBe(1);
  expect(err).toMatch(new RegExp(`was not imported\\. Line ${THROWS + 3}[,:] .+\\.\\n$`));
  expect(ledgersIn(again)).toEqual([]);
});

test('of what is not there nothing is written, and a folder that is not there is named', async () => {
  const { dataFolder: data } = await recorded();
  const folder = folderForTest();
  const { code, err } = await typed('export', '--session', 's-9', '--data', data, '--file', path.join(folder, 'none.csv'));
  expect(code).toBe(1);
  expect(err).toMatch(/^There is no session with this id; [^\n]+\.\n$/);
  expect(readdirSync(folder)).toEqual([]);
  expect(await typed('export', '--data', data, '--file', path.join(folder, 'nowhere', 'none.csv'))).toMatchObject({ code: 1, err: expect.stringContaining('no such file or directory') });
});

test.each([
  [['--session', 's-1', '--athlete', ATHLETE.id], '--session and --athlete both say of what; give one of them.'],
  [['--throws', '1-3'], '--throws counts the throws of one session; say which with --session.'],
  [['--throws', '3-1'], '--throws is "3-1"; give two numbers with a dash between, such as 5-20.'],
  [['--since', 'yesterday'], '--since is "yesterday"; give date, time and distance from UTC, such as 2026-09-21T14:00Z or 2026-09-21T09:00-05:00.'],
  [['--format', 'jsonl', '--no-names'], 'Facts are given out whole: --no-names, --throws, --since and --until are for csv and parquet.'],
  [['--json'], '--json tells what was written into a file; give one with --file.'],
])('%j cannot be exported, and why is said', async (words, sentence) => {
  const { dataFolder: data } = await recorded();
  const file = path.join(folderForTest(), 'none.csv');
  const { code, err } = await typed('export', '--data', data, ...(words[0] === '--json' ? [] : ['--file', file]), ...words);
  expect({ code, err, written: existsSync(file) }).toEqual({ code: 2, err: `${sentence}\n`, written: false });
});
