import { expect, onTestFinished, test } from 'vitest';
import { readingLine } from '../../../command/ready-lines.ts';
import type { ReadAnew } from '../../../server/catch-up.ts';
import { systemClock } from '../../../server/clock.ts';
import { removeWhole } from '../../../server/log/whole-file.ts';
import { seededFolder } from '../../bench/seeded-server.ts';
import { logsOfYears } from '../../bench/million-throws.ts';
import { get, serverForTest } from '../running.ts';

const YEARS = { mounds: 2, athletesOfMound: 2, sessionsOfMound: 40, throwsOfSession: 60 };
/** To open, an intent, a zone, two trials, ten blocks, to close. */
const FACTS_OF_SESSION = YEARS.throwsOfSession + 16;
const FACTS = YEARS.mounds * YEARS.sessionsOfMound * FACTS_OF_SESSION;

function academy(): string {
  const { folder, remove } = seededFolder(logsOfYears(YEARS));
  onTestFinished(remove);
  return folder;
}

/** A slow machine: whoever asks it for the time again has waited so long. */
function slowBy(stepMs: number) {
  let nowMs = 1_700_000_000_000;
  return { ...systemClock, nowMs: () => (nowMs += stepMs) };
}

/** What a start says to whoever started it, and what it writes into its diary. */
function listening() {
  const told: ReadAnew[] = [];
  const lines: Record<string, unknown>[] = [];
  return { told, lines, onReading: (so: ReadAnew) => void told.push(so), logLevel: 'info' as const, diaryTo: { write: (line: string) => void lines.push(JSON.parse(line) as Record<string, unknown>) } };
}

const about = (lines: readonly Record<string, unknown>[]): unknown[] => lines.filter(({ msg }) => /records/.test(String(msg)));

test('a first start over years of records says how far it is, and at the end what it has read; the next one says nothing', async () => {
  const dataFolder = academy();
  const first = listening();
  const server = await serverForTest({ dataFolder, clock: slowBy(2100), ...first });
  const readings = first.told.filter((so) => so.kind === 'reading');
  expect(readings.length).toBeGreaterThan(1);
  expect(readings.every(({ facts, of }, index) => of === FACTS && facts > (readings[index - 1]?.facts ?? 0) && facts <= of)).toBe(true);
  expect(first.told.at(-1)).toEqual({ kind: 'read', facts: FACTS, mounds: 2, tookMs: expect.any(Number) });
  expect(about(first.lines)).toMatchObject(first.told.map(({ kind, ...said }) => ({ ...said, msg: kind === 'read' ? 'the records are read' : 'reading the records anew' })));
  await server.close();
  const second = listening();
  await serverForTest({ dataFolder, clock: slowBy(2100), ...second });
  expect(second.told).toEqual([]);
  expect(about(second.lines)).toEqual([]);
});

test('a start that is over within a second says nothing', async () => {
  const { told, ...more } = listening();
  await serverForTest({ dataFolder: academy(), clock: slowBy(1), ...more });
  expect(told).toEqual([]);
});

test('it is said at most every two seconds', async () => {
  const { told, ...more } = listening();
  await serverForTest({ dataFolder: academy(), clock: slowBy(400), ...more });
  // Four pieces, each with one look at the clock: 1.2 s after the beginning, and not again before 3.2 s.
  expect(told.map(({ kind }) => kind)).toEqual(['reading', 'read']);
});

test('whoever stops it meanwhile is heard, and the next start goes on from there to the same end', async () => {
  const dataFolder = academy();
  const whole = listening();
  const server = await serverForTest({ dataFolder, clock: slowBy(900), ...whole });
  const sessions = await get(server, '/api/sessions');
  await server.close();
  removeWhole(`${dataFolder}/ledgers.db`);
  const stopping = new AbortController();
  const stopped = serverForTest({ dataFolder, clock: slowBy(1100), stop: stopping.signal, onReading: () => stopping.abort() });
  await expect(stopped).rejects.toBe(stopping.signal.reason);
  const { told, ...more } = listening();
  const again = await serverForTest({ dataFolder, clock: slowBy(900), ...more });
  expect(told.at(-1)).toMatchObject({ kind: 'read', facts: FACTS - 2048 });
  expect(await get(again, '/api/sessions')).toEqual(sessions);
});

test('a person reads it in sentences', () => {
  expect(readingLine({ kind: 'reading', facts: 120_832, of: 1_269_504 })).toBe('Reading the records anew: 120,832 of 1,269,504 facts.');
  expect(readingLine({ kind: 'read', facts: 1_269_504, mounds: 64, tookMs: 51_400 })).toBe('Read 1,269,504 facts of 64 mounds in 51 s.');
  expect(readingLine({ kind: 'read', facts: 3000, mounds: 1, tookMs: 1200 })).toBe('Read 3,000 facts of 1 mound in 1 s.');
});
