import { parquetReadObjects } from 'hyparquet';
import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { columnsOut } from '../../../server/files-out/columns.ts';
import { fiveFastballs, Story, ZONE } from '../../core/session/story.ts';
import { busyDay } from '../../parity/sessions.ts';
import { logOf, rowsOf, tableOf } from './given-out.ts';

/** Ana throws five fastballs and two changeups to a target, Ben one that nobody can place; then one that nobody has. */
function evening(): readonly Fact[] {
  const story = new Story().open('ana-1', 'ana').intent('ana-1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 'ana-1', zone: ZONE, speedBand: null, reason: null })
    .say({ kind: 'trial-begun', session: 'ana-1', intent: 'changeup', grip: { seams: 'two-seam', spread: 'wide', thumbDeg: 20, pressure: 'ring', depth: 'deep', tiltDeg: 0 }, cue: { words: '=late thumb', focus: 'internal' }, family: 'turnover' });
  story.throw(80, 8, -10);
  const wild = story.throw(81, 9, -11);
  story.say({ kind: 'throws-excluded', session: 'ana-1', places: [wild], reason: '-slipped' }).say({ kind: 'session-closed', session: 'ana-1' });
  story.throw(70, 5, -5);
  story.open('ben-1', 'ben', 'left');
  story.throw(75, 10, 9);
  return story.facts;
}
const log = logOf(evening());

describe('Throws given out as CSV', () => {
  test('are one row each, with the unit in the name of each measure, against the baseline of their session', async () => {
    const rows = rowsOf(await tableOf(log, { of: { kind: 'session', id: 'ana-1' } }, 'imperial'));
    expect(rows.map((row) => [row['throw'], row['intent'], row['trial'], row['fastball']])).toEqual([...Array.from({ length: 5 }, (_, index) => [String(index + 1), 'four-seam', '', 'true']), ['6', 'changeup', 'A', 'false'], ['7', 'changeup', 'A', 'false']]);
    const changeup = rows[5]!;
    expect(Number(changeup['speed_mph'])).toBeCloseTo(80, 9);
    expect(Number(changeup['separation_speed_mph'])).toBeCloseTo(-10, 9);
    expect(Number(changeup['separation_vertical_in'])).toBeCloseTo(-8, 9);
    expect(Number(changeup['separation_arm_side_in'])).toBeCloseTo(4, 9);
    expect(changeup).toMatchObject({ on_target: 'true', family: 'turnover', grip_thumb_deg: '20', baseline: '1', spin_rpm: '2200', session_open: 'false', time: '2026-09-21T09:13:30.000-05:00' });
    expect(changeup['missing']!.split(' ')).toContain('extension=not-sent');
    expect(changeup['extension_ft']).toBe('');
    expect(rows[6]).toMatchObject({ excluded: 'true', separation_speed_mph: '', on_target: '' });
  });

  test('read the same in every system of units', async () => {
    const [imperial, metric, si] = await Promise.all((['imperial', 'metric', 'si'] as const).map(async (units) => rowsOf(await tableOf(log, { of: { kind: 'session', id: 'ana-1' } }, units))[5]!));
    expect(Number(metric!['separation_speed_kmh'])).toBeCloseTo(Number(imperial!['separation_speed_mph']) * 1.609344, 9);
    expect(Number(metric!['vertical_break_cm'])).toBeCloseTo(Number(imperial!['vertical_break_in']) * 2.54, 9);
    expect(Number(si!['vertical_break_m'])).toBeCloseTo(Number(metric!['vertical_break_cm']) / 100, 9);
    expect(Number(si!['tilt_rad'])).toBeCloseTo((Number(metric!['tilt_deg']) * Math.PI) / 180, 9);
    expect(Number(si!['flight_time_s'])).toBeCloseTo(Number(imperial!['flight_time_ms']) / 1000, 9);
  });

  test('never begin a text as a spreadsheet begins a formula, and leave numbers as they are', async () => {
    const row = rowsOf(await tableOf(log, { of: { kind: 'session', id: 'ana-1' } }))[6]!;
    expect(row).toMatchObject({ cue: "'=late thumb", excluded_because: "'-slipped" });
    const all = rowsOf(await tableOf(log, {}));
    expect(all.some((one) => one['separation_vertical_m']!.startsWith('-'))).toBe(true);
  });

  test('are of an athlete, of a session or all, and of a range of them; a throw that nobody has is in none', async () => {
    const of = async (wanted: Parameters<typeof tableOf>[1]): Promise<string[]> => rowsOf(await tableOf(log, wanted)).map((row) => `${row['session']} ${row['throw']}`);
    expect(await of({})).toEqual(['ana-1 1', 'ana-1 2', 'ana-1 3', 'ana-1 4', 'ana-1 5', 'ana-1 6', 'ana-1 7', 'ben-1 1']);
    expect(await of({ of: { kind: 'athlete', id: 'ben' } })).toEqual(['ben-1 1']);
    expect(await of({ of: { kind: 'session', id: 'ana-1' }, range: { fromThrow: 2, toThrow: 3 } })).toEqual(['ana-1 2', 'ana-1 3']);
    const fourth = evening().filter(({ said }) => said.kind === 'throw-measured')[3]!.atMs;
    expect(await of({ range: { fromMs: fourth, toMs: fourth } })).toEqual(['ana-1 4']);
    expect(await of({ range: { fromMs: fourth + 1 } })).not.toContain('ana-1 4');
  });

  test('without names have codes for whatever is made of a name or was written by hand, the same for the same', async () => {
    const text = (await tableOf(log, { names: false })).toString('utf8');
    expect(text).not.toMatch(/ana|ben|Invented|thumb,|slipped/);
    const rows = rowsOf(Buffer.from(text));
    expect(rows[0]!['athlete']).toMatch(/^[0-9a-f]{12}$/);
    expect(new Set(rows.map((row) => row['athlete'])).size).toBe(2);
    expect(new Set(rows.map((row) => row['session'])).size).toBe(2);
    expect(text.split('\r\n')[0]).not.toContain('athlete_name');
  });

  test('of a session or an athlete that nobody knows are refused in one sentence', async () => {
    await expect(tableOf(log, { of: { kind: 'session', id: 'nobody' } })).rejects.toThrow('There is no session with this id; the list of sessions has those there are.');
    await expect(tableOf(log, { of: { kind: 'athlete', id: 'nobody' } })).rejects.toThrow('There is no athlete with this id');
  });

  test('are broken off when somebody is erased meanwhile', async () => {
    const facts = Array.from({ length: 3 }, (_, day) => busyDay(day + 1, `m-${day}`, 'summary', 40).facts).flat();
    let asked = 0;
    const changing = { ...logOf(facts), get id() { asked += 1; return asked > 6 ? 'log-2' : 'log-1'; } };
    await expect(tableOf(changing, {})).rejects.toThrow('An athlete was erased while this was written');
  });
});

describe('Throws given out as Parquet', () => {
  test('hold what CSV holds, number for number, with types', async () => {
    const day = logOf(busyDay(5, 'north-1', 'path', 60).facts);
    const bytes = await tableOf(day, {}, 'si', 'parquet');
    const file = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer;
    const rows = await parquetReadObjects({ file });
    const csv = rowsOf(await tableOf(day, {}));
    expect(rows.length).toBe(csv.length);
    expect(rows.length).toBeGreaterThan(20);
    const columns = columnsOut({ units: 'si', coded: null });
    for (const [index, row] of rows.entries()) {
      expect(Object.keys(row)).toEqual(columns.map(({ name }) => name));
      for (const { name, type } of columns) {
        const cell: unknown = row[name];
        const text = csv[index]![name];
        if (cell === null || cell === undefined) expect(text).toBe('');
        else if (type === 'moment') expect(new Date(text!).getTime()).toBe((cell as Date).getTime());
        else expect(text).toBe(String(cell));
      }
    }
    expect(rows.some(({ unexplained_across_m: across }) => typeof across === 'number')).toBe(true);
    expect(rows.some(({ speed_se_mps: error }) => typeof error === 'number')).toBe(true);
  });

  test('of nothing is a table without rows', async () => {
    const bytes = await tableOf(log, { range: { fromThrow: 99 } }, 'si', 'parquet');
    expect(await parquetReadObjects({ file: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer })).toEqual([]);
  });
});
