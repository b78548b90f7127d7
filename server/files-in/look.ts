import { createHash } from 'node:crypto';
import { guessColumns, guessDecimal } from '../../core/imports/guess.ts';
import type { Layout } from '../../core/imports/layout.ts';
import { textOf as cellText, type Cell } from '../../core/imports/read-cell.ts';
import { HEAD_BYTES, type FileLook } from '../../core/imports/wire.ts';
import { jsonLines, separated } from './rows-of.ts';

/** Rows that guesses rest on. */
const MOST_ROWS = 200;
const SEPARATORS = [',', ';', '\t'] as const;

/** Looks at the first bytes of a file; null where there is no head and no row in them. */
export async function lookAt(beginning: Uint8Array): Promise<FileLook | null> {
  const head = beginning.subarray(0, HEAD_BYTES);
  return (await jsonHead(head)) ?? (await separatedHead(head));
}

/** Of the same file the same, whatever its rows are. */
export function shapeOf(headers: readonly string[]): string {
  return createHash('sha256').update(JSON.stringify(headers)).digest('hex').slice(0, 32);
}

async function jsonHead(head: Uint8Array): Promise<FileLook | null> {
  const objects: Readonly<Record<string, unknown>>[] = [];
  for await (const { value } of jsonLines(inOne(head))) {
    // The last line may be cut in the middle.
    if (value === null && objects.length === 0) return null;
    if (value !== null && objects.push(value) === MOST_ROWS) break;
  }
  const headers = [...new Set(objects.flatMap(Object.keys))];
  return headers.length === 0 ? null : looked('json-lines', ',', headers, objects.map((one) => headers.map((header) => one[header])));
}

async function separatedHead(head: Uint8Array): Promise<FileLook | null> {
  const read = await Promise.all(SEPARATORS.map(async (separator) => ({ separator, rows: await rowsIn(head, separator) })));
  const [best] = read.toSorted((a, b) => evenness(b.rows) - evenness(a.rows));
  const [headers, ...rows] = best?.rows ?? [];
  if (headers === undefined || rows.length === 0) return null;
  return looked('separated', best!.separator, headers.map((cell) => cellText(cell)), rows.filter((row) => row.length === headers.length));
}

/** Columns that most rows have in common: the right separator parts every row alike. */
function evenness(rows: readonly (readonly Cell[])[]): number {
  const columns = rows[0]?.length ?? 0;
  return columns * rows.filter((row) => row.length === columns).length / Math.max(1, rows.length);
}

async function rowsIn(head: Uint8Array, separator: string): Promise<(readonly Cell[])[]> {
  const rows: (readonly Cell[])[] = [];
  for await (const { cells } of separated(inOne(head), separator, false)) if (rows.push(cells) > MOST_ROWS) break;
  // The last row of a beginning may be cut in the middle.
  return rows.length > MOST_ROWS || rows.length < 3 || head.length < HEAD_BYTES ? rows : rows.slice(0, -1);
}

function looked(form: Layout['form'], separator: Layout['separator'], headers: readonly string[], rows: readonly (readonly Cell[])[]): FileLook {
  const decimal = guessDecimal(rows);
  const guesses = guessColumns(headers, rows, decimal);
  return { layout: { form, separator, decimal, columns: guesses.map(({ column }) => column) }, because: guesses.map(({ because }) => because), rows, shape: shapeOf(headers) };
}

async function* inOne(head: Uint8Array): AsyncGenerator<Uint8Array> {
  yield head;
}
