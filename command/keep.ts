import type { Command } from 'commander';
import path from 'node:path';
import { systemClock } from '../server/clock.ts';
import type * as Keeping from '../server/log/backup.ts';
import { Failure } from './failure.ts';
import { say, sayJson } from './talk.ts';
import { place } from './values.ts';

interface Asked {
  readonly data: string;
  readonly json?: true;
}

export function addBackup(program: Command, home: string): void {
  program.command('backup')
    .description('Copies a data folder, beside a running server too.')
    .option('--data <folder>', 'what is backed up', place('--data'), path.join(home, 'data/own'))
    .option('--to <folder>', 'where to; it must not be there yet (default: backups and the time, in the data folder)', place('--to'))
    .option('--json', 'one line of JSON where a person would read a sentence')
    .addHelpText('after', `
Examples:
  offpace backup
  offpace backup --data bullpen --to /media/usb/bullpen`)
    .action(async ({ data, to, json }: Asked & { to?: string }) => {
      const done = await kept(({ backUp }) => backUp(data, to ?? path.join(data, 'backups', stamp())));
      if (json) sayJson(done);
      else say(`Backed up ${inWords(done)} to ${done.folder} (SHA-256 ${done.digest}). It holds athletes' data and what lets people in: keep it as private as the data folder.`);
    });
}

export function addRestore(program: Command, home: string): void {
  program.command('restore')
    .description('Puts a backup into a data folder that no server uses, and proves that it holds the same.')
    .requiredOption('--from <folder>', 'the backup', place('--from'))
    .option('--data <folder>', 'where it goes', place('--data'), path.join(home, 'data/own'))
    .option('--replace', 'over the log that is there, which is backed up first')
    .option('--json', 'one line of JSON where a person would read a sentence')
    .addHelpText('after', `
Examples:
  offpace restore --from /media/usb/bullpen --data bullpen-again
  offpace restore --from /media/usb/bullpen --replace`)
    .action(async ({ from, data, replace, json }: Asked & { from: string; replace?: true }) => {
      const done = await kept(({ restore }) => restore(from, data, replace ? path.join(data, 'backups', `before-restore-${stamp()}`) : null));
      if (json) sayJson({ folder: data, ...done });
      else say(`Restored ${inWords(done)} into ${data}; they are the same as in the backup (SHA-256 ${done.digest}).`);
    });
}

async function kept<Done>(work: (log: typeof Keeping) => Done): Promise<Done> {
  const log = await import('../server/log/backup.ts');
  try {
    return work(log);
  } catch (error) {
    throw error instanceof log.KeepFailure ? new Failure(error.message) : error;
  }
}

const stamp = (): string => new Date(systemClock.nowMs()).toISOString().replaceAll(':', '-').replace(/\..*/, 'Z');

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
const inWords = ({ facts, mounds }: Pick<Keeping.Backup, 'facts' | 'mounds'>): string => `${counted(facts, 'fact')} of ${counted(mounds, 'mound')}`;
