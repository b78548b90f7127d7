import { Writable } from 'node:stream';
import type { Fact } from '../../../core/facts/fact.ts';
import { exportFacts, exportThrows, type TableFormat, type Wanted } from '../../../server/files-out/export.ts';
import type { ReadableLog } from '../../../server/files-out/readable-log.ts';
import type { UnitSystem } from '../../../server/files-out/units.ts';

/** A log that holds these facts, in memory. */
export function logOf(facts: readonly Fact[]): ReadableLog {
  return {
    id: 'log-1',
    mounds: () => [...new Set(facts.map(({ mound }) => mound))].toSorted(),
    read: (mound, after) => facts.filter((fact) => fact.mound === mound && fact.place > after),
  };
}

async function bytesOf(write: (out: Writable) => Promise<unknown>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  await write(new Writable({ write: (chunk: Buffer, _, done) => { chunks.push(chunk); done(); } }));
  return Buffer.concat(chunks);
}

export const tableOf = (log: ReadableLog, wanted: Partial<Wanted>, units: UnitSystem = 'si', format: TableFormat = 'csv'): Promise<Buffer> =>
  bytesOf((out) => exportThrows(log, { of: { kind: 'all' }, names: true, ...wanted }, { format, units }, out));

export const linesOf = async (log: ReadableLog, of: Wanted['of'] = { kind: 'all' }): Promise<string[]> =>
  (await bytesOf((out) => exportFacts(log, of, out))).toString('utf8').trimEnd().split('\n');

/** Rows of a CSV without quotes in it, by column. */
export function rowsOf(csv: Buffer): Record<string, string>[] {
  const [head, ...rows] = csv.toString('utf8').replace(/^\uFEFF/, '').trimEnd().split('\r\n').map((line) => line.split(','));
  return rows.map((row) => Object.fromEntries(head!.map((name, index) => [name, row[index] ?? ''])));
}
