import { open, readFile, writeFile } from 'node:fs/promises';
import { createReadStream, statSync } from 'node:fs';
import path from 'node:path';
import { DEFAULT_DISTANCE_M } from '../core/facts/vocabulary.ts';
import type { ImportReport } from '../core/facts/import-wire.ts';
import { choicesSchema, type ImportChoices, type Layout } from '../core/imports/layout.ts';
import { HEAD_BYTES } from '../core/imports/wire.ts';
import { complaint } from '../server/complaint.ts';
import { importsInLog, withdrawnInLog } from '../server/files-in/earlier-imports.ts';
import { checkFile, type CheckedFile } from '../server/files-in/import-file.ts';
import { lookAt, shapeOf } from '../server/files-in/look.ts';
import { readRecipes, RecipesUnreadable, type Recipes } from '../server/files-in/recipes.ts';
import { refusalsCsv } from '../server/files-in/report.ts';
import { UnreadableFile } from '../server/files-in/rows-of.ts';
import type { FactLog } from '../server/log/fact-log.ts';
import { EXIT, Failure, FoundWrong, wronglyAsked } from './failure.ts';
import { BY, openedLog } from './own-log.ts';
import { askedToStop } from './stop.ts';
import { progress, remark, say, sayJson } from './talk.ts';

export interface RowsAsked {
  readonly data: string;
  readonly choices?: string;
  readonly recipe?: string;
  readonly keepGood?: true;
  readonly check?: true;
  readonly refused?: string;
  readonly json?: true;
}

const SHOWN_REFUSALS = 20;

/** Brings recorded throws of a table into the log, or only says what would come of it. */
export async function importRows(file: string, asked: RowsAsked): Promise<void> {
  const layout = await layoutOf(file, asked);
  const choices = await choicesOf(asked.choices);
  const log = openedLog(asked.data);
  try {
    // It says itself how far it came: what is finished was not broken off, whenever somebody asks it to stop.
    await read(file, asked, layout, choices, log, askedToStop());
  } finally {
    log.close();
  }
}

async function read(file: string, asked: RowsAsked, layout: Layout, choices: ImportChoices, log: FactLog, stop: AbortSignal): Promise<void> {
  const bar = progress(statSync(file).size, 'bytes');
  const checked = await checkFile(createReadStream(file), { name: path.basename(file), layout, choices, log, folder: asked.data, signal: stop, earlier: () => importsInLog(log), isWithdrawn: withdrawnInLog(log), onProgress: bar.at })
    .catch((error: unknown) => {
      if (stop.aborted) throw new Failure('Broken off; nothing was imported.', EXIT.brokenOff);
      throw error instanceof UnreadableFile ? new Failure(`${file} cannot be read. ${error.message}`) : error;
    })
    .finally(bar.end);
  try {
    if (asked.refused !== undefined) await writeFile(asked.refused, [...refusalsCsv(checked.refusals())].join(''), { mode: 0o600 });
    if (!asked.json) tell(checked, layout);
    if (asked.check) return tellChecked(checked, layout, asked);
    await store(checked, asked, stop);
  } finally {
    checked.drop();
  }
}

function tellChecked({ report }: CheckedFile, layout: Layout, { json }: RowsAsked): void {
  if (json) sayJson({ ...report, layout });
  if (report.refused > 0 || report.good === 0) throw new FoundWrong();
}

async function store(checked: CheckedFile, { keepGood, json }: RowsAsked, stop: AbortSignal): Promise<void> {
  const reply = await checked.store(keepGood ? 'keep-the-good' : 'all-or-nothing', BY, stop);
  switch (reply.kind) {
    case 'stored':
      if (json) sayJson({ ...checked.report, stored: { sessions: reply.sessions, throws: reply.throws } });
      else say(`${reply.throws} throws were imported as ${reply.sessions} ${reply.sessions === 1 ? 'session' : 'sessions'}.`);
      return;
    case 'broken-off': throw new Failure(`Broken off; ${reply.throws} throws of ${reply.sessions} sessions are in the log, the rest is not.`, EXIT.brokenOff);
    case 'refused':
    case 'failed': throw new Failure(reply.sentence);
  }
}

/** What each column was taken for, and what would come of the rows. */
function tell({ report, refusals }: CheckedFile, layout: Layout): void {
  for (const { header, field, unit, towards } of layout.columns) say(`${header}: ${field === null ? 'not read' : [field, unit, towards].filter((word) => word !== null).join(', ')}`);
  say(`${report.rows} rows: ${report.good} good, ${report.refused} refused; ${report.sessions} sessions of ${report.athletes} athletes${daysOf(report)}.`);
  for (const { line, sentence } of refusals(SHOWN_REFUSALS)) say(`line ${line}: ${sentence}`);
  if (report.refused > SHOWN_REFUSALS) say(`and ${report.refused - SHOWN_REFUSALS} more; --refused writes all of them into a file.`);
  if (report.earlier !== null) remark(`${report.earlier.sessions} sessions came out of this very file before, the last on ${new Date(report.earlier.lastAtMs).toISOString()}.`);
}

const daysOf = ({ days }: ImportReport): string => (days === null ? '' : `, ${days.first} to ${days.last}`);

async function layoutOf(file: string, { data, recipe: named }: RowsAsked): Promise<Layout> {
  const look = await lookAt(await beginningOf(file));
  if (look === null) throw new Failure(`${file} has no head with rows below it; give a CSV file or JSON Lines.`);
  const recipes = readableRecipes(data);
  if (named === undefined) return recipes.forShape(look.shape)?.layout ?? look.layout;
  const recipe = recipes.all.find(({ name }) => name === named);
  if (recipe === undefined) return wronglyAsked(`--recipe is "${named}"; ${recipes.all.length === 0 ? 'none is kept in this data folder' : `kept are ${recipes.all.map(({ name }) => `"${name}"`).join(', ')}`}.`);
  if (shapeOf(recipe.layout.columns.map(({ header }) => header)) !== look.shape) throw new Failure(`The recipe "${named}" is for files with other columns than ${file} has; leave it out, or choose another one.`);
  return recipe.layout;
}

function readableRecipes(data: string): Recipes {
  try {
    return readRecipes(data);
  } catch (error) {
    throw error instanceof RecipesUnreadable ? new Failure(error.message) : error;
  }
}

async function beginningOf(file: string): Promise<Uint8Array> {
  const handle = await open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/** What nobody has said: from a mound at full effort, by a device that nobody knows, where this machine stands. */
const USUAL = { athlete: null, athletes: {}, intents: {}, mound: 'imported-1', stage: 'mound', distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full', day: null, device: 'file', sight: 'spin-only', axis: 'none' } as const;

async function choicesOf(file: string | undefined): Promise<ImportChoices> {
  const said = file === undefined ? {} : json(await readFile(file, 'utf8'), file);
  const checked = choicesSchema.safeParse({ ...USUAL, timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone, ...said });
  if (checked.success) return checked.data;
  const { path: where, sentence } = complaint(checked.error);
  return wronglyAsked(`${file ?? 'What was chosen'}${where === '' ? '' : `, ${where}`}: ${sentence}`);
}

function json(text: string, file: string): object {
  try {
    return JSON.parse(text) as object;
  } catch {
    return wronglyAsked(`${file} is not JSON; docs/import.md shows what it holds.`);
  }
}
