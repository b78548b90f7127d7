import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { FORMS } from '../../core/imports/fields.ts';
import { importsInLog } from '../../server/files-in/earlier-imports.ts';
import { checkFile } from '../../server/files-in/import-file.ts';
import { lookAt } from '../../server/files-in/look.ts';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { ABLE, CHOICES, PENA } from '../core/imports/choices.ts';
import { folderForTest } from '../server/folder.ts';

const PAGE = readFileSync(new URL('../../docs/import.md', import.meta.url), 'utf8');
const FILE = readFileSync(new URL('../../docs/import/bullpens.csv', import.meta.url));

async function* whole(): AsyncGenerator<Uint8Array> {
  yield FILE;
}

test('the page names every column that a file can have, with its units', () => {
  const rows = [...PAGE.matchAll(/^\| `(\w+)` \| [^|]+ \|([^|]*)\|$/gm)].map(([, field, units]) => [field, [...units!.matchAll(/`([^`]+)`/g)].map(([, unit]) => unit)]);
  expect(rows).toEqual(Object.entries(FORMS).map(([field, { units }]) => [field, units.map(({ unit }) => unit)]));
});

test('the example comes to what the page says, by its guesses alone', async () => {
  const folder = folderForTest();
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 1_790_000_000_000, newId: () => 'log-1', onTrouble(error) { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  const { layout } = (await lookAt(FILE))!;
  expect(layout.columns.filter(({ field }) => field === null).map(({ header }) => header)).toEqual(['Notas']);
  expect(layout.columns.filter(({ towards }) => towards !== null).map(({ towards }) => towards)).toEqual(['arm', 'right']);
  const choices = { ...CHOICES, athlete: null, day: null, athletes: { 'Alba Inventada': ABLE, 'Bruno Inventado': PENA } };
  const file = await checkFile(whole(), { name: 'bullpens.csv', layout, choices, log: opened.log, earlier: () => importsInLog(opened.log), isWithdrawn: () => false, folder });
  onTestFinished(() => file.drop());
  const { rows, good, refused, sessions } = file.report;
  expect(PAGE).toContain(`It comes to ${rows} rows, ${good} good and ${refused} refused, in ${sessions} sessions:`);
  for (const { line, sentence } of file.refusals()) expect(PAGE).toContain(`    line ${line}: ${sentence}`);
  expect(await file.store('keep-the-good', 'coach:Ana')).toEqual({ kind: 'stored', sessions, throws: good });
  const said = [...opened.log.read('north-1', 0)].map((fact) => fact.said);
  expect(said.find((one) => one.kind === 'throw-imported')).toMatchObject({ body: { summary: { releaseSpeed: 81.2, verticalBreak: 15.8, horizontalBreak: -7.1, release: [-1.7, expect.closeTo(60.5 - 5.8, 1), 5.6] }, spin: { rate: 2010, tilt: 30 } } });
});
