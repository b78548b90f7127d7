import { expect, it } from 'vitest';
import type { Of } from '../../../server/files-out/rows.ts';
import { busyDay } from '../../parity/sessions.ts';
import { logOf, rowsOf, tableOf } from './given-out.ts';

const north = busyDay(3, 'north-1', 'summary', 60);
const south = busyDay(4, 'south-2', 'summary', 60);
const log = logOf([...north.facts, ...south.facts]);

/** How often each mound is read from its beginning while the throws of one are given out. */
async function readFor(of: Of): Promise<{ readonly beginnings: Record<string, number>; readonly rows: Record<string, string>[] }> {
  const beginnings: Record<string, number> = {};
  const read: typeof log.read = (mound, after) => {
    if (after === 0) beginnings[mound] = (beginnings[mound] ?? 0) + 1;
    return log.read(mound, after);
  };
  return { rows: rowsOf(await tableOf({ ...log, read }, { of })), beginnings };
}

it('the throws of one session are worked out of its own mound; every other is only looked through', async () => {
  const session = south.sessions[1]!;
  const { beginnings, rows } = await readFor({ kind: 'session', id: session });
  expect(beginnings).toEqual({ 'north-1': 1, 'south-2': 2 });
  expect(rows.length).toBeGreaterThan(0);
  expect(new Set(rows.map((row) => row['session']))).toEqual(new Set([session]));
  const all = rowsOf(await tableOf(log, {})).filter((row) => row['session'] === session);
  expect(rows).toEqual(all);
});
