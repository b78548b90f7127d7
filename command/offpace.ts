import { Command } from 'commander';
import { existsSync, readFileSync } from 'node:fs';
import { addAdapt } from './adapt.ts';
import { addBackup, addRestore } from './keep.ts';
import { addConform } from './conform.ts';
import { addExport } from './export.ts';
import { addImport } from './import.ts';
import { addReplay } from './replay.ts';
import { addReport } from './report.ts';
import { addServe, addStart } from './serve.ts';
import { addSimulate } from './simulate.ts';
import { addStudy } from './study.ts';

/** Beside this folder in the sources, three folders up in what is built. */
const PACKAGE = ['../package.json', '../../../package.json'].map((file) => new URL(file, import.meta.url)).find((file) => existsSync(file))!;

const AFTER = `
Every command has --help with examples. Exit codes: 0 done, 1 refused or something found wrong, 2 wrongly asked, 130 broken off.`;

/** All commands, each with its options and what it does. */
export function offpace(home: string): Command {
  const program = new Command('offpace')
    .description('Helps a pitching coordinator develop changeups: serves the screens, keeps what was thrown.')
    .version((JSON.parse(readFileSync(PACKAGE, 'utf8')) as { version: string }).version)
    .helpCommand(false)
    // What stands behind the name of a command is that one's, not of one that it belongs to.
    .enablePositionalOptions()
    .showSuggestionAfterError()
    .exitOverride()
    // A complaint is said once, in runOffpace.
    .configureOutput({ outputError: () => {} })
    .addHelpText('after', AFTER);
  const all = [addServe, addStart, addSimulate, addReplay, addAdapt, addReport, addExport, addImport, addBackup, addRestore, addConform, addStudy];
  for (const add of all) add(program, home);
  return program;
}
