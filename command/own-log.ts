import { existsSync } from 'node:fs';
import path from 'node:path';
import { newId } from '../server/chance.ts';
import { systemClock } from '../server/clock.ts';
import type { FactLog } from '../server/log/fact-log.ts';
import { openSqliteLog } from '../server/log/sqlite-log.ts';
import { Failure } from './failure.ts';
import { remark } from './talk.ts';

/** Whoever types a command on the machine of the data folder. */
export const BY = 'coach:this-machine';

/**
 * The log of a data folder, to write into: no server may be using it.
 * @param of `there` where a folder without a log is a mistake; left out, it is made
 */
export function openedLog(data: string, of?: 'there'): FactLog {
  const file = path.join(data, 'facts.db');
  if (of === 'there' && !existsSync(file)) throw new Failure(`There is no log in ${data}; give the data folder of a server with --data.`);
  const log = openSqliteLog({ file, nowMs: systemClock.nowMs, newId, onTrouble: (error) => remark((error as Error).message) });
  if (log.kind === 'failed') throw new Failure(log.sentence);
  return log.log;
}
