import { createHash } from 'node:crypto';
import { Readable, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Cell } from './column.ts';
import { columnsOut, type TableShape } from './columns.ts';
import { csvOf } from './csv.ts';
import { factsAbout } from './facts.ts';
import { parquetOf } from './parquet.ts';
import { asOfNow, type ReadableLog } from './readable-log.ts';
import { rowsOf, type Of, type Range } from './rows.ts';
import type { UnitSystem } from './units.ts';

export const TABLE_FORMATS = ['csv', 'parquet'] as const;
export type TableFormat = (typeof TABLE_FORMATS)[number];

/** What is given out. */
export interface Wanted {
  readonly of: Of;
  readonly range?: Range;
  /** False for none: codes stand in place of ids, which are made of names, and of what somebody wrote. */
  readonly names: boolean;
}

/**
 * Writes throws as a table, one tidy row each, in memory that does not grow with their number, and ends `out`.
 * @throws {ExportFailure} for a session or athlete that the log does not know, and when somebody is erased meanwhile
 */
export async function exportThrows(log: ReadableLog, { of, range = {}, names }: Wanted, { format, units }: { readonly format: TableFormat; readonly units: UnitSystem }, out: Writable): Promise<{ readonly rows: number }> {
  const shape: TableShape = { units, coded: names ? null : coderOf(log.id) };
  let count = 0;
  async function* counted(rows: AsyncIterable<Cell[][]>): AsyncGenerator<Cell[][]> {
    for await (const some of rows) {
      count += some.length;
      yield some;
    }
  }
  const rows = counted(rowsOf(asOfNow(log), of, range, shape));
  const columns = columnsOut(shape);
  await pipeline(Readable.from(format === 'csv' ? csvOf(rows, columns) : parquetOf(rows, columns), { objectMode: false }), out);
  return { rows: count };
}

/**
 * Writes facts as JSON Lines, a line that says what they are first, and ends `out`.
 * @throws {ExportFailure} as `exportThrows`
 */
export async function exportFacts(log: ReadableLog, of: Of, out: Writable): Promise<{ readonly facts: number }> {
  const { count, lines } = await factsAbout(asOfNow(log), of);
  await pipeline(Readable.from(lines, { objectMode: false }), out);
  return { facts: count };
}

/** The same code for the same id in every export of this log: rows can be joined, and nobody is read out of it. */
function coderOf(log: string): TableShape['coded'] {
  return (id) => createHash('sha256').update(`${log}\n${id}`).digest('hex').slice(0, 12);
}
