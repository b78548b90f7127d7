import { stringify } from 'csv-stringify/sync';
import type { RowRefusal } from '../../core/facts/import-wire.ts';

/** The refused rows of a file as CSV, line by line. Text that a spreadsheet would take for a formula is written as text. */
export function* refusalsCsv(refusals: Iterable<RowRefusal>): Generator<string> {
  yield stringify([['line', 'code', 'column', 'why']]);
  for (const { line, code, column, sentence } of refusals) yield stringify([[line, code, column, sentence]], { escape_formulas: true });
}
