import type { Command } from 'commander';
import { createReadStream, statSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { newId } from '../server/chance.ts';
import { systemClock } from '../server/clock.ts';
import { EXIT, Failure, wronglyAsked } from './failure.ts';
import type { RowsAsked } from './import-rows.ts';
import { aborted, askedToStop } from './stop.ts';
import { progress, say, sayJson, type Progress } from './talk.ts';
import { place } from './values.ts';


/** More than a first line of an export has. */
const READ_TO_TELL = 4096;

export function addImport(program: Command, home: string): void {
  const bringing = program.command('import')
    .enablePositionalOptions()
    .description('Brings recorded throws (CSV or JSON Lines) into the log, or the facts of an export into an empty data folder.')
    .argument('<file>', 'with throws, or what `offpace export --format jsonl` wrote', place('The file'))
    .option('--data <folder>', 'where they go; no server may be using it', place('--data'), path.join(home, 'data/own'))
    .option('--choices <file>', 'whose throws they are and what else no column says: docs/command-line.md', place('--choices'))
    .option('--recipe <name>', 'read the columns as this recipe says (default: the one for files of this shape, or as guessed)')
    .option('--check', 'store nothing: say what the columns are and which rows are refused why')
    .option('--keep-good', 'where some rows are refused, import the others')
    .option('--refused <file>', 'write the refused rows with their reasons into this file, as CSV', place('--refused'))
    .option('--json', 'one line of JSON where a person would read sentences')
    .addHelpText('after', `
Exit code 1 when nothing was imported, or with --check when a row is refused.

Examples:
  offpace import bullpens.csv --choices choices.json --check
  offpace import bullpens.csv --choices choices.json --keep-good --refused refused.csv
  offpace import everything.jsonl --data bullpen-again`)
    .action(bring);
  addList(bringing, home);
  addWithdraw(bringing, home);
}

function addList(bringing: Command, home: string): void {
  bringing.command('list')
    .description('Says which imports count, newest first, beside a running server too.')
    .option('--data <folder>', 'where they were brought in', place('--data'), path.join(home, 'data/own'))
    .option('--json', 'one line of JSON where a person would read a line for each')
    .addHelpText('after', `
Examples:
  offpace import list
  offpace import list --data bullpen --json`)
    .action(async (asked: Pick<RowsAsked, 'data' | 'json'>) => (await import('./import-withdraw.ts')).listImports(asked));
}

function addWithdraw(bringing: Command, home: string): void {
  bringing.command('withdraw')
    .description('Takes an import back as a whole: nothing counts it from then on, and that cannot be undone. The log keeps what happened.')
    .argument('<import>', 'as `offpace import list` names it')
    .requiredOption('--file <name>', 'the name of its file, said again, so that nobody takes back another one by mistake')
    .option('--data <folder>', 'where it was brought in; no server may be using it', place('--data'), path.join(home, 'data/own'))
    .option('--json', 'one line of JSON where a person would read a sentence')
    .addHelpText('after', `
Examples:
  offpace import withdraw 1f0c9a3e --file bullpens.csv
  offpace import withdraw 1f0c9a3e --file bullpens.csv --data bullpen`)
    .action(async (id: string, asked: Pick<RowsAsked, 'data' | 'json'> & { readonly file: string }) => (await import('./import-withdraw.ts')).withdrawImport(id, asked));
}

async function bring(file: string, asked: RowsAsked): Promise<void> {
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) throw new Failure(`There is no file ${file}; check the name.`);
  if (await isOfFacts(file)) return bringExport(file, asked);
  await (await import('./import-rows.ts')).importRows(file, asked);
}

/** An export of facts says so in its first line. */
async function isOfFacts(file: string): Promise<boolean> {
  const stream = createReadStream(file, { end: READ_TO_TELL });
  for await (const line of createInterface({ input: stream, crlfDelay: Infinity })) return /^\s*\{\s*"kind"\s*:\s*"readme"/.test(line);
  return false;
}

async function bringExport(file: string, { data, json, ...more }: RowsAsked): Promise<void> {
  if (Object.keys(more).length > 0) wronglyAsked('This is an export of facts, which comes back whole: --choices, --recipe, --check, --keep-good and --refused are for files of throws.');
  const [{ bringFacts }, { factsIn, FactsUnreadable }] = await Promise.all([import('../server/log/bring-facts.ts'), import('../server/files-out/read-facts.ts')]);
  const stop = askedToStop();
  const bar = progress(statSync(file).size, 'bytes');
  try {
    const brought = await bringFacts(data, factsIn(linesOf(file, bar, stop)), { nowMs: systemClock.nowMs(), id: newId() });
    bar.end();
    if (brought.kind === 'failed') throw new Failure(brought.sentence);
    if (json) sayJson({ folder: data, facts: brought.facts, mounds: brought.mounds });
    else say(`${brought.facts} facts of ${brought.mounds} ${brought.mounds === 1 ? 'mound' : 'mounds'} were brought into ${data}.`);
  } catch (error) {
    bar.end();
    throw error instanceof FactsUnreadable ? new Failure(`${file} was not imported. ${error.message}`) : error;
  }
}

/** Broken off, it throws: nothing of the file stays in the log. */
async function* linesOf(file: string, bar: Progress, stop: AbortSignal): AsyncGenerator<string> {
  const stream = createReadStream(file);
  void aborted(stop).then(() => stream.destroy());
  for await (const line of createInterface({ input: stream, crlfDelay: Infinity })) {
    if (stop.aborted) break;
    bar.at(stream.bytesRead);
    yield line;
  }
  if (stop.aborted) throw new Failure('Broken off; nothing was imported.', EXIT.brokenOff);
}
