import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Fact } from '../core/facts/fact.ts';
import { foldOrPass } from '../core/session/fold-or-pass.ts';
import { emptyLedger, knowsSession, type Ledger } from '../core/session/ledger.ts';
import { factsIn, FactsUnreadable } from '../server/files-out/read-facts.ts';
import { openToRead } from '../server/log/read-beside.ts';
import { Failure } from './failure.ts';

/** Every mound of a data folder as it stands now, beside a running server too. */
export function ledgersIn(dataFolder: string): Ledger[] {
  const opened = openToRead(dataFolder);
  if (opened.kind === 'failed') throw new Failure(opened.sentence);
  try {
    return opened.log.mounds().map((mound) => folded(mound, opened.log.read(mound, 0)));
  } finally {
    opened.close();
  }
}

/** The same of a file of facts that `export` wrote. */
export async function ledgersOf(file: string): Promise<Ledger[]> {
  const facts: Fact[] = [];
  try {
    for await (const fact of factsIn(createInterface({ input: createReadStream(file), crlfDelay: Infinity }))) facts.push(fact);
  } catch (error) {
    throw error instanceof FactsUnreadable ? new Failure(`${file} cannot be read. ${error.message}`) : error;
  }
  return [...new Set(facts.map(({ mound }) => mound))].map((mound) => folded(mound, facts.filter((fact) => fact.mound === mound)));
}

function folded(mound: string, facts: Iterable<Fact>): Ledger {
  let ledger = emptyLedger(mound);
  for (const fact of facts) ledger = foldOrPass(ledger, fact);
  return ledger;
}

/** The mound that holds a session. */
export function ledgerWith(ledgers: readonly Ledger[], session: string, where: string): Ledger {
  const found = ledgers.find((ledger) => knowsSession(ledger, session));
  if (found !== undefined) return found;
  const known = ledgers.flatMap(({ order }) => order);
  throw new Failure(`There is no session ${session} in ${where}; ${known.length === 0 ? 'nothing has been recorded there' : `the newest there are ${known.slice(-5).toReversed().join(', ')}`}.`);
}
