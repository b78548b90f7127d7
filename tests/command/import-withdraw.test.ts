import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ledgersIn } from '../../command/recorded.ts';
import type { BroughtImport } from '../../core/facts/import-wire.ts';
import { throwsOf } from '../../core/session/ledger.ts';
import { folderForTest } from '../server/folder.ts';
import { ATHLETE } from '../server/frames.ts';
import { get, serverForTest } from '../server/running.ts';
import { typed } from './typed.ts';

const throwsIn = (data: string): number => ledgersIn(data).flatMap((ledger) => ledger.order.flatMap((session) => throwsOf(ledger, session))).length;

/** Files of so many throws of one athlete each, brought into a data folder. */
async function broughtIn(...files: readonly (readonly [name: string, throws: number])[]): Promise<string> {
  const folder = folderForTest();
  const data = path.join(folder, 'data');
  const choices = path.join(folder, 'choices.json');
  writeFileSync(choices, JSON.stringify({ timeZone: 'UTC', athlete: ATHLETE, day: '2024-05-03' }));
  for (const [name, throws] of files) {
    const file = path.join(folder, name);
    writeFileSync(file, `speed (mph)\n${Array.from({ length: throws }, (_, index) => `${80 + throws}.${index + 1}\n`).join('')}`);
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    expect(await typed('import', file, '--data', data, '--choices', choices, '--json')).toMatchObject({ code: 0, err: '' });
  }
  return data;
}

async function listed(data: string): Promise<BroughtImport[]> {
  const { out } = await typed('import', 'list', '--data', data, '--json');
  return (JSON.parse(out) as { imports: BroughtImport[] }).imports;
}

test('what came in is listed, newest first, with what a person needs to tell one from another', async () => {
  const data = await broughtIn(['spring.csv', 3], ['summer.csv', 1]);
  const [summer, spring] = await listed(data);
  expect([summer, spring]).toMatchObject([{ fileName: 'summer.csv', throws: 1 }, { fileName: 'spring.csv', throws: 3, sessions: 1, athletes: [ATHLETE.name], mounds: ['imported-1'], by: 'coach:this-machine' }]);
  const { code, out, err } = await typed('import', 'list', '--data', data);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out.split('\n')).toEqual([
    expect.stringMatching(`^${summer!.id}: summer\\.csv, 1 throw in 1 session of .+; brought in \\S+Z by coach:this-machine$`),
    expect.stringMatching(`^${spring!.id}: spring\\.csv, 3 throws in 1 session of `), '',
  ]);
});

test('an import is taken back as a whole, the others stay, and the file can come in again', async () => {
  const data = await broughtIn(['spring.csv', 3], ['summer.csv', 2]);
  const [, spring] = await listed(data);
  expect(await typed('import', 'withdraw', spring!.id, '--file', 'spring.csv', '--data', data)).toEqual({ code: 0, out: 'spring.csv was taken back: 3 throws in 1 session. The log keeps what happened.\n', err: '' });
  expect((await listed(data)).map(({ fileName }) => fileName)).toEqual(['summer.csv']);
  expect(throwsIn(data)).toBe(2);
  const choices = path.join(path.dirname(data), 'choices.json');
  expect(await typed('import', path.join(path.dirname(data), 'spring.csv'), '--data', data, '--choices', choices, '--json')).toMatchObject({ code: 0, err: '' });
  expect(throwsIn(data)).toBe(5);
});

test('a server that starts afterwards does not count it either', async () => {
  const data = await broughtIn(['spring.csv', 3], ['summer.csv', 2]);
  const before = await serverForTest({ dataFolder: data });
  expect(await get<BroughtImport[]>(before, '/api/imports')).toHaveLength(2);
  await before.close();
  const [{ id }] = (await listed(data)) as [BroughtImport];
  expect(JSON.parse((await typed('import', 'withdraw', id, '--file', 'summer.csv', '--data', data, '--json')).out)).toEqual({ folder: data, import: id, file: 'summer.csv', sessions: 1, throws: 2 });
  const after = await serverForTest({ dataFolder: data });
  expect(await get<BroughtImport[]>(after, '/api/imports')).toMatchObject([{ fileName: 'spring.csv' }]);
});

test('the file may be named by where it lies', async () => {
  const data = await broughtIn(['spring.csv', 3]);
  const [{ id }] = (await listed(data)) as [BroughtImport];
  expect(await typed('import', 'withdraw', id, '--file', path.join(path.dirname(data), 'spring.csv'), '--data', data)).toMatchObject({ code: 0, err: '' });
  expect(throwsIn(data)).toBe(0);
});

test('what is meant wrongly takes nothing back and says what to do', async () => {
  const data = await broughtIn(['spring.csv', 3]);
  const [{ id }] = (await listed(data)) as [BroughtImport];
  const asked = (...args: string[]) => typed('import', 'withdraw', ...args);
  expect(await asked(id, '--file', 'summer.csv', '--data', data)).toEqual({ code: 1, out: '', err: 'The file of this import is called spring.csv, so nothing was taken back; say the name of the file that is meant.\n' });
  expect(await asked('spring', '--file', 'spring.csv', '--data', data)).toEqual({ code: 1, out: '', err: `No import spring counts in ${data}; those that do are ${id} (spring.csv).\n` });
  expect(await asked(id, '--data', data)).toEqual({ code: 2, out: '', err: expect.stringMatching(/^Required option '--file <name>' not specified; --help/) });
  expect(throwsIn(data)).toBe(3);
  expect(await asked(id, '--file', 'spring.csv', '--data', data)).toMatchObject({ code: 0 });
  expect(await asked(id, '--file', 'spring.csv', '--data', data)).toEqual({ code: 1, out: '', err: `No import ${id} counts in ${data}; nothing was brought in there, or all of it was taken back.\n` });
  expect(await typed('import', 'list', '--data', data)).toEqual({ code: 0, out: `No import counts in ${data}.\n`, err: '' });
});

test('a folder without a log stays one, and a folder of a running server is left to it', async () => {
  const nowhere = path.join(folderForTest(), 'nowhere');
  const none = { code: 1, out: '', err: `There is no log in ${nowhere}; give the data folder of a server with --data.\n` };
  expect(await typed('import', 'list', '--data', nowhere)).toEqual(none);
  expect(await typed('import', 'withdraw', 'a', '--file', 'a.csv', '--data', nowhere)).toEqual(none);
  expect(existsSync(nowhere)).toBe(false);
  const data = await broughtIn(['spring.csv', 3]);
  await serverForTest({ dataFolder: data });
  const [{ id }] = (await listed(data)) as [BroughtImport];
  expect(await typed('import', 'withdraw', id, '--file', 'spring.csv', '--data', data)).toEqual({ code: 1, out: '', err: `Another Offpace is using ${data}; stop that one, or give another folder with --data.\n` });
  expect(throwsIn(data)).toBe(3);
});
