import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { checkFile } from '../../../server/files-in/import-file.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { ABLE, CHOICES, layoutOf } from '../../core/imports/choices.ts';
import { folderForTest } from '../folder.ts';

const ROWS = 1_000_000;
const DAY_MS = 86_400_000;

/** Two hundred throws a day for thirteen years, a hundred rows at a time. */
async function* rows(): AsyncGenerator<Uint8Array> {
  yield Buffer.from('moment,speed,spin,vertical,side\n');
  for (let row = 0; row < ROWS; row += 100) {
    yield Buffer.from(Array.from({ length: 100 }, (_, index) => `${Date.UTC(2011, 0, 1) + Math.floor((row + index) / 200) * DAY_MS + ((row + index) % 200) * 20_000},${(70 + ((row + index) % 97) / 10).toFixed(1)},1650,7.${row % 10},-12.${index % 10}\n`).join(''));
  }
}

test('a million rows are checked and stored in memory that does not grow with them', { timeout: 1_800_000 }, async () => {
  const folder = folderForTest();
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 1_790_000_000_000, newId: () => 'log-1', onTrouble(error) { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  const heapMb = (): number => process.memoryUsage().heapUsed / 1024 / 1024;
  const before = heapMb();
  let peak = before;
  const look = (): void => {
    peak = Math.max(peak, heapMb());
  };
  const layout = layoutOf([['moment', 'ms'], ['releaseSpeed', 'mph'], ['spinRate', 'rpm'], ['verticalBreak', 'in'], ['horizontalBreak', 'in', 'right']]);
  const begun = performance.now();
  const file = await checkFile(rows(), { name: 'million.csv', layout, choices: { ...CHOICES, athlete: ABLE, day: null }, log: opened.log, earlier: () => [], isWithdrawn: () => false, folder, onProgress: look });
  onTestFinished(() => file.drop());
  const checked = performance.now();
  expect(file.report).toMatchObject({ rows: ROWS, good: ROWS, refused: 0, days: { first: '2010-12-31' } });
  const watching = setInterval(look, 20);
  expect(await file.store('keep-the-good', 'coach:Ana')).toMatchObject({ kind: 'stored', throws: ROWS });
  clearInterval(watching);
  console.log(`checked in ${((checked - begun) / 1000).toFixed(1)} s, stored in ${((performance.now() - checked) / 1000).toFixed(1)} s; heap ${before.toFixed(0)} MB before, ${peak.toFixed(0)} MB at most`);
  expect(peak - before).toBeLessThan(150);
});
