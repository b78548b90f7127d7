import { expect, onTestFinished, test } from 'vitest';
import path from 'node:path';
import { checkFile } from '../../server/files-in/import-file.ts';
import { lookAt } from '../../server/files-in/look.ts';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { becauseText } from '../../web/import/because-words.ts';
import { exampleCsv } from '../../web/import/example.ts';
import '../../web/words/of-imports.ts';
import { speechIn } from '../../web/words/speech.ts';
import { ABLE, CHOICES } from '../core/imports/choices.ts';
import { folderForTest } from '../server/folder.ts';

test.each(['en', 'es'] as const)('the example that is offered at /import (%s) comes in as it is: every column is known by its head, and every row is good', async (language) => {
  const bytes = Buffer.from(`\ufeff${exampleCsv(language)}`);
  const { layout, because } = (await lookAt(bytes))!;
  expect(layout.columns.map(({ field }) => field)).toEqual(['date', 'time', 'athlete', 'intent', 'releaseSpeed', 'spinRate', 'tilt', 'verticalBreak', 'horizontalBreak']);
  expect(layout.columns.map((column, index) => becauseText(column, because[index]!, speechIn(language, 'imperial')).lookTwice)).not.toContain(true);
  const folder = folderForTest();
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 1_790_000_000_000, newId: () => 'log-1', onTrouble(error) { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  async function* whole() { yield bytes; }
  const file = await checkFile(whole(), { name: 'example.csv', layout, choices: { ...CHOICES, athlete: ABLE, day: null, athletes: { 'Alba Invented': ABLE, 'Alba Inventada': ABLE } }, log: opened.log, earlier: () => [], isWithdrawn: () => false, folder });
  onTestFinished(() => file.drop());
  expect([...file.refusals()]).toEqual([]);
  expect(file.report).toMatchObject({ rows: 7, good: 7, sessions: 1 });
});
