import { CsvError, parse } from 'csv-parse';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import type { Layout } from '../../core/imports/layout.ts';
import type { Cell } from '../../core/imports/read-cell.ts';
import { textOf } from './text-of.ts';

/** A row of a file: its cells in the order of the columns, or that it is no row. `line` is where it ends, the first line of the file being 1. */
export type FileRow = { readonly kind: 'row'; readonly line: number; readonly cells: readonly Cell[] } | { readonly kind: 'not-json'; readonly line: number };

/** A row longer than this, in characters, is no throw but a quote that was never closed. */
const LONGEST_ROW = 128 * 1024;

/** A file that cannot be read to its end; the message is a sentence. */
export class UnreadableFile extends Error {}

/**
 * The rows of a file behind its head, one after the other, however long it is.
 * @throws {UnreadableFile} where the file itself, not one row of it, cannot be read
 */
export function rowsOf(bytes: AsyncIterable<Uint8Array>, layout: Pick<Layout, 'form' | 'separator' | 'columns'>): AsyncGenerator<FileRow> {
  return layout.form === 'separated' ? behindHead(separated(bytes, layout.separator)) : jsonRows(bytes, layout.columns.map(({ header }) => header));
}

/**
 * Every row of a separated file, its head too.
 * @param whole false for the beginning of a file, which may end within a row: that one is left out
 */
export async function* separated(bytes: AsyncIterable<Uint8Array>, separator: string, whole = true): AsyncGenerator<Extract<FileRow, { kind: 'row' }>> {
  const text = Readable.from(textOf(bytes));
  const parser = text.pipe(parse({ delimiter: separator, info: true, relax_column_count: true, relax_quotes: true, skip_empty_lines: true, max_record_size: LONGEST_ROW, skip_records_with_error: !whole }));
  text.once('error', (error) => parser.destroy(error));
  try {
    for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: { lines: number } }>) yield { kind: 'row', line: info.lines, cells: record };
  } catch (error) {
    if (error instanceof CsvError) throw new UnreadableFile(sentenceOf(error));
    throw error;
  } finally {
    text.destroy();
  }
}

function sentenceOf({ code, lines }: CsvError & { readonly lines?: number }): string {
  if (code === 'CSV_QUOTE_NOT_CLOSED' || code === 'CSV_MAX_RECORD_SIZE') return `A quote that is opened by line ${lines ?? '?'} is never closed, so the rest of the file is one long cell; close the quote and import the file again.`;
  return `The file cannot be read from line ${lines ?? '?'} on; open it in a spreadsheet, save it as CSV, and import that.`;
}

async function* behindHead<Row>(rows: AsyncIterable<Row>): AsyncGenerator<Row> {
  let isHead = true;
  for await (const row of rows) {
    if (!isHead) yield row;
    isHead = false;
  }
}

async function* jsonRows(bytes: AsyncIterable<Uint8Array>, headers: readonly string[]): AsyncGenerator<FileRow> {
  for await (const { line, value } of jsonLines(bytes)) {
    yield value === null ? { kind: 'not-json', line } : { kind: 'row', line, cells: headers.map((header) => value[header]) };
  }
}

/** The objects of a JSON Lines file; null for a line that is none. Empty lines are passed over. */
export async function* jsonLines(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<{ readonly line: number; readonly value: Readonly<Record<string, unknown>> | null }> {
  let line = 0;
  for await (const text of createInterface({ input: Readable.from(textOf(bytes)), crlfDelay: Infinity })) {
    line += 1;
    if (text.trim() !== '') yield { line, value: objectIn(text) };
  }
}

function objectIn(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}
