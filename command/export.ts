import { Option, type Command } from 'commander';
import { createWriteStream, existsSync, renameSync, rmSync } from 'node:fs';
import { once } from 'node:events';
import path from 'node:path';
import type { Writable } from 'node:stream';
import type { Wanted } from '../server/files-out/export.ts';
import type { ReadableLog } from '../server/files-out/readable-log.ts';
import { EXIT, Failure, wronglyAsked } from './failure.ts';
import { aborted, askedToStop } from './stop.ts';
import { remark, sayJson } from './talk.ts';
import { place } from './values.ts';

interface Asked {
  readonly data: string;
  readonly session?: string;
  readonly athlete?: string;
  readonly format: 'csv' | 'parquet' | 'jsonl';
  readonly units: 'imperial' | 'metric' | 'si';
  readonly names: boolean;
  readonly throws?: Range;
  readonly since?: number;
  readonly until?: number;
  readonly file?: string;
  readonly json?: true;
}

type Range = NonNullable<Wanted['range']>;

export function addExport(program: Command, home: string): void {
  program.command('export')
    .description('Gives out throws as a table, or facts as JSON Lines that `import` takes back; beside a running server too.')
    .option('--data <folder>', 'where the throws are kept', place('--data'), path.join(home, 'data/own'))
    .option('--session <id>', 'of one session; without this and --athlete everything')
    .option('--athlete <id>', 'of one athlete')
    .addOption(new Option('--format <format>', 'csv and parquet: one row a throw; jsonl: the facts').choices(['csv', 'parquet', 'jsonl']).default('csv'))
    .addOption(new Option('--units <units>', 'of the table; its header names each').choices(['imperial', 'metric', 'si']).default('imperial'))
    .option('--no-names', 'codes instead of names and ids, and nothing that somebody wrote')
    .option('--throws <range>', 'of a session the throws from a number to a number, such as 5-20', throwRange)
    .option('--since <time>', 'throws from this time on, such as 2026-09-21T14:00Z', moment('--since'))
    .option('--until <time>', 'throws up to this time', moment('--until'))
    .option('--file <file>', 'where it goes (default: standard output)', place('--file'))
    .option('--json', 'one line of JSON on what was written; needs --file')
    .addHelpText('after', `
Examples:
  offpace export --session evening-1 --file evening.csv
  offpace export --athlete ana-1 --format parquet --units metric --no-names --file ana.parquet
  offpace export --format jsonl --file everything.jsonl`)
    .action(give);
}

async function give(asked: Asked): Promise<void> {
  const { data, format, file, json } = asked;
  if (json && file === undefined) wronglyAsked('--json tells what was written into a file; give one with --file.');
  if (file !== undefined && existsSync(file)) throw new Failure(`${file} is already there; give another name with --file.`);
  if (file === undefined && format === 'parquet' && process.stdout.isTTY) wronglyAsked('Parquet is no text for a terminal; give a file with --file.');
  const wanted = format === 'jsonl' ? factsOf(asked) : ofWhat(asked);
  const { openToRead } = await import('../server/log/read-beside.ts');
  const opened = openToRead(data);
  if (opened.kind === 'failed') throw new Failure(opened.sentence);
  try {
    const written = await into(file, (out) => writtenTo(out, opened.log, wanted, asked));
    if (json) sayJson({ file, format, ...written });
    else if (file !== undefined) remark(`${Object.values(written)[0]} ${'rows' in written ? 'throws' : 'facts'} are in ${file}.${asked.names ? ' It names athletes: keep it as private as the data folder.' : ''}`);
  } finally {
    opened.close();
  }
}

async function writtenTo(out: Writable, log: ReadableLog, of: Wanted['of'], asked: Asked): Promise<{ readonly rows: number } | { readonly facts: number }> {
  const [{ exportFacts, exportThrows }, { ExportFailure }] = await Promise.all([import('../server/files-out/export.ts'), import('../server/files-out/export-failure.ts')]);
  const { format, units, names } = asked;
  try {
    if (format === 'jsonl') return await exportFacts(log, of, out);
    return await exportThrows(log, { of, names, range: rangeOf(asked) }, { format, units }, out);
  } catch (error) {
    throw error instanceof ExportFailure ? new Failure(error.message) : error;
  }
}

function ofWhat({ session, athlete, throws }: Asked): Wanted['of'] {
  if (session !== undefined && athlete !== undefined) wronglyAsked('--session and --athlete both say of what; give one of them.');
  if (throws !== undefined && session === undefined) wronglyAsked('--throws counts the throws of one session; say which with --session.');
  if (session !== undefined) return { kind: 'session', id: session };
  return athlete === undefined ? { kind: 'all' } : { kind: 'athlete', id: athlete };
}

/** Facts come whole: what leaves some of them out, or changes them, could not be brought back. */
function factsOf(asked: Asked): Wanted['of'] {
  if (!asked.names || Object.keys(rangeOf(asked)).length > 0) wronglyAsked('Facts are given out whole: --no-names, --throws, --since and --until are for csv and parquet.');
  return ofWhat(asked);
}

function rangeOf({ throws, since, until }: Asked): Range {
  return { ...throws, ...(since === undefined ? {} : { fromMs: since }), ...(until === undefined ? {} : { toMs: until }) };
}

/** A file has its name only once all of it is written. */
async function into<Written>(file: string | undefined, write: (out: Writable) => Promise<Written>): Promise<Written> {
  if (file === undefined) return write(process.stdout);
  const unfinished = `${file}.unfinished`;
  const out = createWriteStream(unfinished, { mode: 0o600 });
  void aborted(askedToStop()).then(() => out.destroy(new Failure('Broken off; nothing was written.', EXIT.brokenOff)));
  try {
    await once(out, 'open');
    const written = await write(out);
    renameSync(unfinished, file);
    return written;
  } catch (error) {
    out.destroy();
    rmSync(unfinished, { force: true });
    throw error;
  }
}

function throwRange(text: string): Range {
  const [, from, to] = /^(\d+)-(\d+)$/.exec(text) ?? [];
  if (from === undefined || Number(from) > Number(to)) return wronglyAsked(`--throws is "${text}"; give two numbers with a dash between, such as 5-20.`);
  return { fromThrow: Number(from), toThrow: Number(to) };
}

const moment = (name: string) => (text: string): number => {
  const atMs = Date.parse(text);
  return /^\d{4}-\d{2}-\d{2}T.*(?:Z|[+-]\d{2}:\d{2})$/.test(text) && !Number.isNaN(atMs) ? atMs : wronglyAsked(`${name} is "${text}"; give date, time and distance from UTC, such as 2026-09-21T14:00Z or 2026-09-21T09:00-05:00.`);
};
