import { stringify } from 'csv-stringify/sync';
import { timeIn } from '../../core/session/local-time.ts';
import type { Cell } from './column.ts';
import type { ColumnOut } from './columns.ts';

/** Spreadsheets take a file for UTF-8 only where it begins so. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Rows as CSV: comma, point, UTF-8 with a byte order mark, lines end in CR LF (RFC 4180). An empty cell is a value that is not there.
 * Text that a spreadsheet would take for a formula gets an apostrophe before it.
 */
export async function* csvOf(rows: AsyncIterable<Cell[][]>, columns: readonly ColumnOut[]): AsyncGenerator<string> {
  const zone = columns.findIndex(({ name }) => name === 'time_zone');
  const moments = columns.flatMap(({ type }, index) => (type === 'moment' ? [index] : []));
  yield BYTE_ORDER_MARK + written([columns.map(({ name }) => name)]);
  for await (const some of rows) yield written(some.map((row) => localTimes(row, moments, String(row[zone]))));
}

function localTimes(row: readonly Cell[], moments: readonly number[], zone: string): Cell[] {
  const cells = [...row];
  for (const index of moments) cells[index] = timeIn(zone, (row[index] as Date).getTime());
  return cells;
}

function written(rows: readonly (readonly Cell[])[]): string {
  return stringify(rows as Cell[][], { escape_formulas: true, record_delimiter: 'windows', cast: { boolean: String } });
}
