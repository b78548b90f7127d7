import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { ImportChoices, Layout } from '../../../core/imports/layout.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, sessionsIn } from '../../../core/session/ledger.ts';
import { importsInLog } from '../../../server/files-in/earlier-imports.ts';
import { checkFile, type CheckedFile } from '../../../server/files-in/import-file.ts';
import { Imports } from '../../../server/files-in/imports.ts';
import { lookAt } from '../../../server/files-in/look.ts';
import { refusalsCsv } from '../../../server/files-in/report.ts';
import { UnreadableFile } from '../../../server/files-in/rows-of.ts';
import type { Ledgers } from '../../../server/ledgers.ts';
import type { FactLog } from '../../../server/log/fact-log.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { ABLE, CHOICES, PENA } from '../../core/imports/choices.ts';
import { folderForTest } from '../folder.ts';

const HEAD = 'date,time,athlete,pitch kind,release speed (mph),induced vertical break (in),horizontal break (in)';
const ROWS = [
  '2024-05-03,17:05:10,Able,four-seam,88.1,16.2,-7.4',
  '2024-05-03,17:05:40,Able,changeup,78.4,7.1,-14.8',
  '2024-05-04,17:00:00,Able,changeup,78.0,7.3,-14.1',
  '2024-05-03,17:06:00,Peña,changeup,70.2,5.1,12.2',
];
const BOTH: Partial<ImportChoices> = { athlete: null, athletes: { Able: ABLE, Peña: PENA }, day: null };

interface Place {
  readonly log: FactLog;
  readonly folder: string;
}

function placeForTest(largestPages?: number): Place {
  const folder = folderForTest();
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 1_790_000_000_000, newId: () => 'log-1', onTrouble() {}, ...(largestPages === undefined ? {} : { largestPages }) });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  onTestFinished(() => opened.log.close());
  return { log: opened.log, folder };
}

async function* pieces(text: string, size = 100): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function checked({ log, folder }: Place, text: string, choices: Partial<ImportChoices> = {}, more: Partial<{ layout: Layout; signal: AbortSignal; mostRows: number; size: number }> = {}): Promise<CheckedFile> {
  const layout = more.layout ?? (await lookAt(Buffer.from(text)))!.layout;
  const file = await checkFile(pieces(text, more.size), { name: 'bullpens.csv', layout, choices: { ...CHOICES, ...BOTH, ...choices }, log, folder, earlier: () => importsInLog(log), isWithdrawn: () => false, ...more });
  onTestFinished(() => file.drop());
  return file;
}

const textOf = (rows: readonly string[] = ROWS): string => `${HEAD}\n${rows.join('\n')}\n`;
const linesIn = ({ log }: Place): string[] => log.mounds().flatMap((mound) => [...log.read(mound, 0)]).map(({ said }) => (said.kind === 'session-imported' ? `${said.athlete.name} ${new Date(said.openedAtMs).toISOString()}` : said.kind === 'throw-imported' ? `line ${said.source.sequence}` : said.kind));

describe('a file of throws', () => {
  test('becomes closed sessions by athlete and day, in the order of their days', async () => {
    const place = placeForTest();
    const file = await checked(place, textOf());
    expect(file.report).toMatchObject({ rows: 4, good: 4, refused: 0, sessions: 3, athletes: 2, mounds: ['north-1'], days: { first: '2024-05-03', last: '2024-05-04' }, earlier: null });
    expect(linesIn(place)).toEqual([]);
    expect(await file.store('all-or-nothing', 'coach:Ana')).toEqual({ kind: 'stored', sessions: 3, throws: 4 });
    expect(linesIn(place)).toEqual([
      'Invented Able 2024-05-03T22:05:10.000Z', 'line 2', 'line 3',
      'Inventada Peña 2024-05-03T22:06:00.000Z', 'line 5',
      'Invented Able 2024-05-04T22:00:00.000Z', 'line 4',
    ]);
    const facts = [...place.log.read('north-1', 0)];
    expect(new Set(facts.map(({ by, atMs }) => `${by} ${atMs}`))).toEqual(new Set(['coach:Ana 1790000000000']));
    expect(sessionsIn(facts.reduce(foldFact, emptyLedger('north-1')))).toHaveLength(3);
  });

  test('is not imported twice: every row is known again, in this file or in a longer one', async () => {
    const place = placeForTest();
    await (await checked(place, textOf())).store('all-or-nothing', 'coach:Ana');
    const again = await checked(place, textOf());
    expect(again.report).toMatchObject({ good: 0, refused: 4, refusedBecause: { known: 4 }, earlier: { sessions: 3, lastAtMs: 1_790_000_000_000 } });
    expect(await again.store('keep-the-good', 'coach:Ana')).toMatchObject({ kind: 'refused', code: 'nothing-good' });
    const longer = await checked(place, textOf([...ROWS, '2024-05-05,17:00:00,Able,changeup,77.0,7.3,-14.1']));
    expect(longer.report).toMatchObject({ good: 1, refused: 4, earlier: null });
    expect(await longer.store('keep-the-good', 'coach:Ana')).toEqual({ kind: 'stored', sessions: 1, throws: 1 });
  });

  test('keeps throws that say the same where it says no times of day, and knows each of them again', async () => {
    const place = placeForTest();
    const text = 'date,speed (mph)\n2024-05-03,78\n2024-05-03,78\n2024-05-03,78\n';
    const file = await checked(place, text, { athlete: ABLE });
    expect(file.report).toMatchObject({ good: 3, sessions: 1 });
    await file.store('all-or-nothing', 'coach:Ana');
    const said = [...place.log.read('north-1', 0)].map((fact) => fact.said);
    expect(said[0]).toMatchObject({ times: 'of-days', openedAtMs: Date.UTC(2024, 4, 3, 17) });
    expect(said.slice(1).map((one) => (one.kind === 'throw-imported' ? one.source.time - Date.UTC(2024, 4, 3, 17) : null))).toEqual([0, 1000, 2000]);
    expect((await checked(place, text, { athlete: ABLE })).report).toMatchObject({ good: 0, refused: 3 });
    expect((await checked(place, `${text}2024-05-03,78\n`, { athlete: ABLE })).report).toMatchObject({ good: 1, refused: 3 });
  });

  test('is held to the bounds of device frames, in the same sentences, line by line', async () => {
    const place = placeForTest();
    const file = await checked(place, textOf([...ROWS, '2024-05-03,17:07:00,Able,changeup,178.4,7.1,-14.8', '2024-05-03,17:08:00,Able,changeup,78.4,97.1,-14.8', '2024-05-03,25:08:00,Able,changeup,78.4,7.1,-14.8', '2024-05-03,17:09:00,Able']));
    expect([...file.refusals()].map(({ line, code, column, sentence }) => [line, code, column, sentence])).toEqual([
      [6, 'impossible', 'release speed (mph)', 'A speed of 79.8 m/s (178 mph) is outside the 10 to 50 m/s of a throw here; check the declared units.'],
      [7, 'impossible', 'induced vertical break (in)', 'A break of 2.47 m is beyond 1.5 m; check units.movement.'],
      [8, 'unreadable', 'time', '"25:08:00" is not a time of day such as 17:05:30.'],
      [9, 'ragged', '', 'This line has 3 columns where the head of the file has 7; look for a separator too many or a quote that is not closed.'],
    ]);
    expect(await file.store('all-or-nothing', 'coach:Ana')).toMatchObject({ kind: 'refused', code: 'rows-refused', sentence: '4 rows are refused, so nothing was imported; mend the file, or keep the good rows.' });
    expect(linesIn(place)).toEqual([]);
    expect(await file.store('keep-the-good', 'coach:Ana')).toMatchObject({ kind: 'stored', throws: 4 });
  });

  test('has a list of refusals for spreadsheets in which nothing is a formula', async () => {
    const file = await checked(placeForTest(), 'date,=1+1,speed\n2024-05-03,x,fast\n', { athlete: ABLE }, { layout: { form: 'separated', separator: ',', decimal: '.', columns: [{ header: 'date', field: 'date', unit: 'year-first', towards: null }, { header: '=1+1', field: null, unit: null, towards: null }, { header: '=speed', field: 'releaseSpeed', unit: 'mph', towards: null }] } });
    expect([...refusalsCsv(file.refusals())].join('')).toBe('line,code,column,why\n2,unreadable,\'=speed,"""fast"" is not a number."\n');
  });

  test('with quoted lines and bytes cut anywhere is read the same', async () => {
    const text = '\u{feff}Fecha;Lanzador;Velocidad (km/h);Notas\r\n03/05/2024;Peña;112,9;"dos\r\nrenglones; ""uno"""\r\n23/05/2024;Peña;113,5;\r\n';
    const files = await Promise.all([1, 7, 4096].map((size) => checked(placeForTest(), text, {}, { size })));
    for (const file of files) expect(file.report).toMatchObject({ rows: 2, good: 2, sessions: 2, days: { first: '2024-05-03', last: '2024-05-23' } });
  });

  test('of JSON Lines may bring whole paths in the form of the device protocol', async () => {
    const path61 = Array.from({ length: 61 }, (_, index) => [index * 0.0066, -0.5 + index * 0.005, 16.5 - index * 0.26, 1.8 - index * 0.015]);
    const row = { timestamp: 1_714_756_000_000, body: { path: path61, spin: { rate: 1800 } } };
    const file = await checked(placeForTest(), `${JSON.stringify(row)}\nnot json\n${JSON.stringify({ ...row, body: { path: path61.slice(0, 9) } })}\n`, { athlete: ABLE });
    expect(file.report).toMatchObject({ rows: 3, good: 1, refusedBecause: { 'not-json': 1, malformed: 1 } });
    expect([...file.refusals()][1]!.sentence).toContain('60 to 300 samples');
  });

  test('that is broken off leaves nothing, nor one that cannot be read or is too long', async () => {
    const place = placeForTest();
    const long = textOf(Array.from({ length: 1200 }, () => ROWS[0]!));
    const ending = new AbortController();
    const reading = checked(place, long, {}, { signal: ending.signal });
    ending.abort(new Error('broken off'));
    await expect(reading).rejects.toThrow('broken off');
    await expect(checked(place, textOf(), {}, { mostRows: 3 })).rejects.toThrow(UnreadableFile);
    await expect(checked(place, `${textOf()}"${'x'.repeat(140_000)}`)).rejects.toThrow(/A quote that is opened .* is never closed/);
    expect(linesIn(place)).toEqual([]);
    expect(readdirSync(place.folder).filter((name) => name.startsWith('importing-'))).toEqual([]);
  });

  test('that is dropped while its sessions are stored is broken off between two of them, and leaves nothing beside the log', async () => {
    const place = placeForTest();
    const file = await checked(place, textOf());
    const ending = new AbortController();
    const storing = file.store('keep-the-good', 'coach:Ana', ending.signal);
    ending.abort();
    file.drop();
    expect(await storing).toEqual({ kind: 'broken-off', sessions: 1, throws: 2 });
    expect(linesIn(place)).toEqual(['Invented Able 2024-05-03T22:05:10.000Z', 'line 2', 'line 3']);
    expect(readdirSync(place.folder).filter((name) => name.startsWith('importing-'))).toEqual([]);
  });

  test('that is sent twice at once leaves the rows of one of them, until the import ends', async () => {
    const { log, folder } = placeForTest();
    const imports = new Imports(log, { all: () => [] } as unknown as Ledgers, folder);
    const staged = (): number => readdirSync(folder).filter((name) => name.startsWith('importing-')).length;
    const under = imports.begin({ name: 'bullpens.csv', layout: (await lookAt(Buffer.from(textOf())))!.layout, choices: { ...CHOICES, ...BOTH } });
    await Promise.all([imports.read(under, pieces(textOf())), imports.read(under, pieces(textOf()))]);
    expect(staged()).toBe(1);
    imports.end(under.id);
    expect(staged()).toBe(0);
  });

  test('is in the log whole or not at all where the disk fills up', async () => {
    const place = placeForTest(45);
    const file = await checked(place, textOf(Array.from({ length: 500 }, (_, index) => `2024-05-0${1 + (index % 9)},17:05:10,Able,changeup,78.4,${index / 100},-14.8`)));
    expect(await file.store('all-or-nothing', 'coach:Ana')).toMatchObject({ kind: 'failed', sentence: expect.stringContaining('disk of the server is full') });
    expect(linesIn(place)).toEqual([]);
    expect((await place.log.append({ mound: 'north-1', by: 'coach', said: { kind: 'air-set', air: { where: 'indoors', temperatureC: 20, relativeHumidity: 0.5, height: { kind: 'altitude', altitudeM: 0 }, wind: null } } })).kind).toBe('stored');
  });
});
