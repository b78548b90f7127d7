import { createHash, type Hash } from 'node:crypto';
import { impossibility } from '../../core/facts/bounds.ts';
import { throwBodySchema } from '../../core/facts/frames.ts';
import type { Field } from '../../core/imports/fields.ts';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { momentIn } from '../../core/imports/local-moment.ts';
import { rowReader, type RowRead } from '../../core/imports/read-row.ts';
import { dayIn } from '../../core/session/local-day.ts';
import { asSentence, complaint } from '../complaint.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { RowRefusal } from '../../core/facts/import-wire.ts';
import type { StagedRow, StagedRows } from '../log/staged-rows.ts';
import { rowsOf, UnreadableFile, type FileRow } from './rows-of.ts';

/** The file as it was read. */
export interface FileRead {
  readonly sha256: string;
  readonly bytes: number;
  /** Rows that hold something, the head not counted. */
  readonly rows: number;
  /** What stands for athletes whom nobody has chosen. */
  readonly strangers: readonly string[];
}

export interface Reading {
  readonly layout: Layout;
  readonly choices: ImportChoices;
  readonly log: Pick<FactLog, 'requested' | 'knowsRequest'>;
  /** Whether an imported session was taken back: its rows may come again. */
  isWithdrawn(mound: string, session: string): boolean;
  /** Told now and then how far the reading is. */
  onProgress?(bytes: number, rows: number): void;
  readonly signal?: AbortSignal;
  /** Left out, as many as there are. */
  readonly mostRows?: number;
}

/** Rows between two looks at whether anybody else wants to work, or whether the import was broken off. */
const BREATH = 500;
const MOST_STRANGERS = 100;

/**
 * Reads a file to its end and puts each of its rows to the good or to the refused ones. Nothing is in the log yet.
 * @throws {UnreadableFile} where the file itself cannot be read
 * @throws the reason of `signal` once the import is broken off
 */
export async function checkRows(bytes: AsyncIterable<Uint8Array>, staged: StagedRows, { layout, choices, log, isWithdrawn, onProgress, signal, mostRows = Infinity }: Reading): Promise<FileRead> {
  const hash = createHash('sha256');
  const seen = { bytes: 0 };
  const check = rowChecker(layout, choices);
  const strangers = new Set<string>();
  const nameFor = freeName(log, isWithdrawn);
  let rows = 0;
  for await (const row of rowsOf(counted(bytes, hash, seen), layout)) {
    rows += 1;
    if (rows > mostRows) throw new UnreadableFile(`The file has more than ${mostRows} rows; part it, or import it with "offpace import" while the server is stopped.`);
    const checked = check(row);
    if (checked.kind === 'good') staged.addGood(checked.sitting, checked.row);
    else {
      const { code, column, sentence, stranger } = checked;
      staged.addRefused({ line: row.line, code, column, sentence });
      if (stranger !== undefined && stranger !== '' && strangers.size < MOST_STRANGERS) strangers.add(stranger);
    }
    if (rows % BREATH !== 0) continue;
    onProgress?.(seen.bytes, rows);
    await new Promise(setImmediate);
    signal?.throwIfAborted();
  }
  signal?.throwIfAborted();
  for (const _ of staged.complete(nameFor, KNOWN)) {
    await new Promise(setImmediate);
    signal?.throwIfAborted();
  }
  onProgress?.(seen.bytes, rows);
  return { sha256: hash.digest('hex'), bytes: seen.bytes, rows, strangers: [...strangers] };
}

/** Where an import was taken back, its rows have a further name for each time that they came. */
function freeName(log: Reading['log'], isWithdrawn: Reading['isWithdrawn']): (identity: string) => string | null {
  return (identity) => {
    for (let times = 1, name = identity; ; times += 1, name = `${identity}~${times}`) {
      if (!log.knowsRequest(name)) return name;
      const fact = log.requested(name);
      if (fact?.said.kind !== 'throw-imported' || !isWithdrawn(fact.mound, fact.said.session)) return null;
    }
  };
}

async function* counted(bytes: AsyncIterable<Uint8Array>, hash: Hash, seen: { bytes: number }): AsyncGenerator<Uint8Array> {
  for await (const chunk of bytes) {
    hash.update(chunk);
    seen.bytes += chunk.length;
    yield chunk;
  }
}

type Checked =
  | { readonly kind: 'good'; readonly sitting: { readonly mound: string; readonly day: string; readonly session: string }; readonly row: StagedRow }
  | ({ readonly kind: 'refused'; readonly stranger?: string } & Omit<RowRefusal, 'line'>);

/** Where a throw says what a column says. */
const PLACES: readonly (readonly [place: string, field: Field])[] = [
  ['summary.releaseSpeed', 'releaseSpeed'], ['summary.plateSpeed', 'plateSpeed'], ['summary.verticalBreak', 'verticalBreak'], ['summary.horizontalBreak', 'horizontalBreak'],
  ['summary.flightTime', 'flightTime'], ['summary.release', 'releaseHeight'], ['summary.plate', 'plateHeight'], ['spin.rate', 'spinRate'], ['spin.tilt', 'tilt'], ['spin.efficiency', 'efficiency'],
  ['extension', 'extension'], ['armSpeed', 'armSpeed'], ['path', 'path'],
];

const KNOWN = { code: 'known', column: '', sentence: 'This throw was imported before, with the same athlete, time and measures; it is not imported twice.' } as const;

/** Holds every row against the same bounds as a device's throw. */
function rowChecker(layout: Layout, choices: ImportChoices): (row: FileRow) => Checked {
  const read = rowReader(layout, choices);
  return (row) => {
    if (row.kind === 'not-json') return refused('not-json', '', 'This line is no JSON object; a JSON Lines file has one object in each line.');
    const said = read(row.cells);
    return said.kind === 'refused' ? said : checked(said, row.line);
  };

  function checked(said: RowRead, line: number): Checked {
    const body = throwBodySchema.safeParse(said.body);
    if (!body.success) {
      const { path, sentence } = complaint(body.error);
      return refused('malformed', columnOf(path), sentence);
    }
    const impossible = impossibility(body.data, said.units, choices);
    if (impossible !== null) return refused('impossible', columnOf(impossible.path), asSentence(impossible.sentence));
    const { day, atMs } = when(said);
    const { athlete, mound, session, intent, trial, units } = said;
    return { kind: 'good', sitting: { mound, day, session }, row: { line, athlete, atMs, intent, trial, units, body: body.data, identity: identityOf([athlete.id, day, atMs, units, body.data]) } };
  }

  /** The head of the column that a place in a throw came out of; the place itself where it came out of none. */
  function columnOf(place: string): string {
    const field = PLACES.find(([beginning]) => `body.${place}`.includes(beginning))?.[1];
    return layout.columns.find((column) => column.field === field)?.header ?? place;
  }

  function when({ moment }: RowRead): { readonly day: string; readonly atMs: number | null } {
    if (moment.kind === 'absolute') return { day: dayIn(choices.timeZone, moment.atMs), atMs: moment.atMs };
    return { day: moment.day, atMs: moment.timeMs === null ? null : momentIn(choices.timeZone, moment.day, moment.timeMs) };
  }
}

/** What a row says names it, so that it is known again in any file. */
function identityOf(said: unknown): string {
  return `import-${createHash('sha256').update(JSON.stringify(said)).digest('hex').slice(0, 40)}`;
}

function refused(code: string, column: string, sentence: string): Checked {
  return { kind: 'refused', code, column, sentence };
}
