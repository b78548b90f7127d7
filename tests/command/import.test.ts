import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ledgersIn } from '../../command/recorded.ts';
import { throwsOf } from '../../core/session/ledger.ts';
import { folderForTest } from '../server/folder.ts';
import { ATHLETE } from '../server/frames.ts';
import { serverForTest } from '../server/running.ts';
import { typed } from './typed.ts';

/** Ten rows of two invented athletes; the one in line 10 is a mistake. */
const FILE = fileURLToPath(new URL('../../docs/import/bullpens.csv', import.meta.url));

function placeForTest(said: object = {}): { readonly data: string; readonly choices: string } {
  const folder = folderForTest();
  const choices = path.join(folder, 'choices.json');
  const athletes = { 'Alba Inventada': { ...ATHLETE, id: 'alba' }, 'Bruno Inventado': { ...ATHLETE, id: 'bruno', hand: 'left' } };
  writeFileSync(choices, JSON.stringify({ timeZone: 'America/Chicago', athletes, ...said }));
  return { data: path.join(folder, 'data'), choices };
}

const throwsIn = (data: string): number => ledgersIn(data).flatMap((ledger) => ledger.order.flatMap((session) => throwsOf(ledger, session))).length;

test('a file is checked without storing anything, and said column by column and line by line', async () => {
  const { data, choices } = placeForTest();
  const { code, out } = await typed('import', FILE, '--data', data, '--choices', choices, '--check');
  expect(code).toBe(1);
  expect(out).toContain('\nVelocidad (mph): releaseSpeed, mph\n');
  expect(out).toContain('\nNotas: not read\n');
  expect(out).toContain('10 rows: 9 good, 1 refused; 3 sessions of 2 athletes, 2024-05-03 to 2024-05-23.\nline 10: A speed of 76.9 m/s');
  expect(throwsIn(data)).toBe(0);
});

test('where a row is refused nothing is imported, unless the good ones are kept; and not twice', async () => {
  const { data, choices } = placeForTest();
  const refused = path.join(path.dirname(choices), 'refused.csv');
  expect(await typed('import', FILE, '--data', data, '--choices', choices, '--json')).toEqual({ code: 1, out: '', err: '1 row is refused, so nothing was imported; mend the file, or keep the good rows.\n' });
  expect(throwsIn(data)).toBe(0);
  const kept = await typed('import', FILE, '--data', data, '--choices', choices, '--keep-good', '--refused', refused, '--json');
  expect(kept.code).toBe(0);
  expect(JSON.parse(kept.out)).toMatchObject({ rows: 10, good: 9, refused: 1, stored: { sessions: 3, throws: 9 } });
  expect(readFileSync(refused, 'utf8')).toMatch(/^line,code,column,why\n10,/);
  expect(throwsIn(data)).toBe(9);
  expect(await typed('import', FILE, '--data', data, '--choices', choices, '--keep-good')).toMatchObject({ code: 1, err: expect.stringContaining('3 sessions came out of this very file before') });
  expect(throwsIn(data)).toBe(9);
});

test('what cannot be used is said in a sentence, before anything is read', async () => {
  const { data, choices } = placeForTest({ stage: 'garden' });
  const folder = path.dirname(choices);
  const server = await serverForTest();
  expect(await typed('import', FILE, '--data', data, '--choices', choices)).toMatchObject({ code: 2, err: expect.stringMatching(/choices\.json, stage: The field stage must be .+\.\n$/) });
  expect(await typed('import', FILE, '--data', data, '--recipe', 'gone')).toEqual({ code: 2, out: '', err: '--recipe is "gone"; none is kept in this data folder.\n' });
  expect(await typed('import', path.join(folder, 'gone.csv'), '--data', data)).toEqual({ code: 1, out: '', err: `There is no file ${path.join(folder, 'gone.csv')}; check the name.\n` });
  expect(await typed('import', FILE, '--data', server.dataFolder)).toEqual({ code: 1, out: '', err: `Another Offpace is using ${server.dataFolder}; stop that one, or give another folder with --data.\n` });
  expect(existsSync(data)).toBe(false);
});
