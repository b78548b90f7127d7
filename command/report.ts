import type { Command } from 'commander';
import { Option } from 'commander';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { sessionIn, type Ledger } from '../core/session/ledger.ts';
import type { Sheet } from '../web/report/sheet.ts';
import type { AthleteRecord } from '../web/trials/record.ts';
import { Failure, wronglyAsked } from './failure.ts';
import { asPage, asText } from './report-forms.ts';
import { say, sayJson } from './talk.ts';
import { place } from './values.ts';

interface Asked {
  readonly session?: string;
  readonly athlete?: string;
  readonly data: string;
  readonly lang?: 'en' | 'es';
  readonly units?: 'imperial' | 'metric';
  readonly html?: string;
  readonly json?: true;
}

export function addReport(program: Command, home: string): void {
  program.command('report')
    .description('Says in words what the report of a session says, or of all sessions of an athlete; beside a running server too.')
    .option('--session <id>', 'one session')
    .option('--athlete <id>', 'all sessions of an athlete, newest first')
    .option('--data <folder>', 'where the throws are kept', place('--data'), path.join(home, 'data/own'))
    .addOption(new Option('--lang <language>', 'instead of the athlete\'s own language').choices(['en', 'es']))
    .addOption(new Option('--units <units>', 'instead of the athlete\'s own units').choices(['imperial', 'metric']))
    .option('--html <file>', 'into one file that any browser shows and prints, with nothing beside it', place('--html'))
    .option('--json', 'one line of JSON where a person would read sentences')
    .addHelpText('after', `
Examples:
  offpace report --session evening-1
  offpace report --athlete ana-1 --lang es --html ana.html`)
    .action(report);
}

async function report(asked: Asked): Promise<void> {
  const { session, athlete, data, html, json } = asked;
  if ((session === undefined) === (athlete === undefined)) wronglyAsked('Say whose report: either --session or --athlete with an id.');
  const { ledgersIn, ledgerWith } = await import('./recorded.ts');
  const ledgers = ledgersIn(data);
  const record = await recordOf(ledgers, athlete ?? sessionIn(ledgerWith(ledgers, session!, data), session!)!.athlete.id, data);
  const { language, sheet } = await sheetOf(record, asked);
  if (html !== undefined) {
    writeFileSync(html, asPage(sheet, language), { mode: 0o600 });
    if (!json) return say(`The report is in ${html}. It names an athlete: keep it as private as the data folder.`);
  }
  if (json) sayJson({ athlete: record.athlete.id, session: session ?? null, sessions: record.sessions.map(({ entry }) => entry.id), ...sheet });
  else say(asText(sheet));
}

async function sheetOf(record: AthleteRecord, { session, lang, units }: Asked): Promise<{ language: string; sheet: Sheet }> {
  await import('../web/words/of-desk.ts');
  const [{ athleteSheet, sessionSheet }, { speechIn }] = await Promise.all([import('../web/report/sheet.ts'), import('../web/words/speech.ts')]);
  const language = lang ?? record.athlete.language;
  const speech = speechIn(language, units ?? record.athlete.units);
  return { language, sheet: session === undefined ? athleteSheet(record, speech) : sessionSheet(record, session, speech)! };
}

async function recordOf(ledgers: readonly Ledger[], id: string, data: string): Promise<AthleteRecord> {
  const [{ athleteRecords }, { athleteDays }, { foldedSession }] = await Promise.all([import('../server/api/athlete-records.ts'), import('../server/api/athlete-days.ts'), import('../web/trials/record.ts')]);
  const sessions = athleteRecords(ledgers, id)?.flatMap((record) => foldedSession(record) ?? []) ?? [];
  const [newest] = sessions;
  if (newest === undefined) throw new Failure(`There is no athlete ${id} with a session in ${data}; known there are ${known(ledgers)}.`);
  return { athlete: newest.entry.athlete, sessions, days: athleteDays(ledgers, id)! };
}

function known(ledgers: readonly Ledger[]): string {
  const ids = [...new Set(ledgers.flatMap(({ athletes }) => Object.keys(athletes)))];
  return ids.length === 0 ? 'none at all' : ids.slice(0, 10).join(', ');
}
