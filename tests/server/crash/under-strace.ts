import { spawnSync } from 'node:child_process';
import type { RunBy } from '../forked.ts';

/** Every call by which a server writes to its disk, makes that last, and speaks to others. */
const CALLS = 'pwrite64,fsync,fdatasync,write,writev';

/** @throws when strace is not there: what it shows cannot be shown without it */
export function demandStrace(): void {
  if (spawnSync('strace', ['-V']).status !== 0) throw new Error('strace is missing; install it (on Debian: apt-get install strace) and try again.');
}

/** Ends the server by SIGKILL as it enters its nth write to any file of a database. */
export function killedAtWrite(nth: number): RunBy {
  return { under: ['strace', '-f', '-o', '/dev/null', '-e', 'trace=pwrite64', '-e', `inject=pwrite64:signal=SIGKILL:when=${nth}`] };
}

/** The system calls the nth flush of the log a failure, and every other one a success. */
export function flushFails(nth: number): RunBy {
  return { under: ['strace', '-f', '-o', '/dev/null', '-e', 'trace=fdatasync', '-e', `inject=fdatasync:error=EIO:when=${nth}`] };
}

/** Writes down every call with the file that it went to and what was in it. */
export function tracedTo(file: string, main?: string): RunBy {
  return { under: ['strace', '-f', '-y', '-s', '5000', '-o', file, '-e', `trace=${CALLS}`], ...(main === undefined ? {} : { main }) };
}
