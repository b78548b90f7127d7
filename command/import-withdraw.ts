import path from 'node:path';
import type { BroughtImport } from '../core/facts/import-wire.ts';
import { broughtIn, withdraw } from '../server/files-in/brought-in.ts';
import { Failure } from './failure.ts';
import { BY, openedLog } from './own-log.ts';
import { ledgersIn } from './recorded.ts';
import { say, sayJson } from './talk.ts';

interface Asked {
  readonly data: string;
  readonly json?: true;
}

/** Says which imports count in a data folder, beside a running server too. */
export function listImports({ data, json }: Asked): void {
  const imports = broughtIn(ledgersIn(data));
  if (json) return sayJson({ folder: data, imports });
  for (const one of imports) say(lineOf(one));
  if (imports.length === 0) say(`No import counts in ${data}.`);
}

/** Takes an import back as a whole; nothing counts it from then on, and the log keeps it. */
export function withdrawImport(id: string, { data, file, json }: Asked & { readonly file: string }): void {
  const log = openedLog(data, 'there');
  try {
    const ledgers = ledgersIn(data);
    const imports = broughtIn(ledgers);
    const known = imports.find((one) => one.id === id);
    if (known === undefined) throw new Failure(`No import ${id} counts in ${data}; ${imports.length === 0 ? 'nothing was brought in there, or all of it was taken back' : `those that do are ${imports.map((one) => `${one.id} (${one.fileName})`).join(', ')}`}.`);
    const reply = withdraw(log, ledgers, id, file === known.fileName ? file : path.basename(file), BY);
    if (reply.kind !== 'withdrawn') throw new Failure(reply.sentence);
    if (json) sayJson({ folder: data, import: id, file: known.fileName, sessions: reply.sessions, throws: reply.throws });
    else say(`${known.fileName} was taken back: ${counted(reply.throws, 'throw')} in ${counted(reply.sessions, 'session')}. The log keeps what happened.`);
  } finally {
    log.close();
  }
}

function lineOf({ id, fileName, atMs, by, sessions, throws, athletes, mounds }: BroughtImport): string {
  return `${id}: ${fileName}, ${counted(throws, 'throw')} in ${counted(sessions, 'session')} of ${athletes.join(', ')} on ${mounds.join(', ')}; brought in ${new Date(atMs).toISOString()} by ${by}`;
}

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
