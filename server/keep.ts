import path from 'node:path';
import { parseArgs } from 'node:util';
import { systemClock } from './clock.ts';
import { backUp, KeepFailure, restore } from './log/backup.ts';

/** The program behind `npm run backup` and `npm run restore`: one line on what was done, or one sentence on why not. */
function run([command, ...args]: readonly string[]): string {
  const { data, to, from, replace } = typed(command, args);
  const stamp = new Date(systemClock.nowMs()).toISOString().replaceAll(':', '-').replace(/\..*/, 'Z');
  if (command === 'backup') {
    const { folder, facts, mounds, digest } = backUp(data, to ?? path.join(data, 'backups', stamp));
    return `Backed up ${counted(facts, 'fact')} of ${counted(mounds, 'mound')} to ${folder} (SHA-256 ${digest}). It holds athletes' data and what lets people in: keep it as private as the data folder.`;
  }
  if (from === undefined) throw new KeepFailure('Say which backup with --from and the folder that npm run backup printed.');
  const { facts, mounds, digest } = restore(from, data, replace ? path.join(data, 'backups', `before-restore-${stamp}`) : null);
  return `Restored ${counted(facts, 'fact')} of ${counted(mounds, 'mound')} into ${data}; they are the same as in the backup (SHA-256 ${digest}).`;
}

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

interface Typed {
  readonly data: string;
  readonly to?: string;
  readonly from?: string;
  readonly replace: boolean;
}

function typed(command: string | undefined, args: string[]): Typed {
  const data = { type: 'string', default: 'data/own' } as const;
  try {
    if (command === 'backup') return { replace: false, ...parseArgs({ args, options: { data, to: { type: 'string' } } }).values };
    return parseArgs({ args, options: { data, from: { type: 'string' }, replace: { type: 'boolean', default: false } } }).values;
  } catch (error) {
    throw new KeepFailure(`${(error as Error).message.split('. ')[0]}; the options are ${command === 'backup' ? '--data and --to' : '--from, --data and --replace'}.`);
  }
}

try {
  process.stdout.write(`${run(process.argv.slice(2))}\n`);
} catch (error) {
  const code = (error as { readonly code?: string }).code;
  const foreseen = error instanceof KeepFailure || code !== undefined;
  process.stderr.write(`${foreseen ? (error as Error).message : (error as Error).stack}\n`);
  process.exitCode = 1;
}
