import type { ImportReport } from '../../core/facts/import-wire.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import type { FactLog } from '../log/fact-log.ts';

/** A session that came out of a file: which file, and when. */
export interface EarlierImport {
  readonly sha256: string;
  readonly atMs: number;
}

/** Every imported session of a log, read through: for a program that holds no ledgers. */
export function* importsInLog(log: Pick<FactLog, 'mounds' | 'read'>): Generator<EarlierImport> {
  for (const mound of log.mounds()) {
    for (const { said, atMs } of log.read(mound, 0)) if (said.kind === 'session-imported') yield { sha256: said.file.sha256, atMs };
  }
}

export function* importsInLedgers(ledgers: readonly Ledger[]): Generator<EarlierImport> {
  for (const { sessions } of ledgers) {
    for (const { imported } of Object.values(sessions)) if (imported !== undefined) yield { sha256: imported.file.sha256, atMs: imported.atMs };
  }
}

/** What came out of a file of the same bytes before; null where nothing did. */
export function earlierOf(imports: Iterable<EarlierImport>, sha256: string): ImportReport['earlier'] {
  const same = [...imports].filter((one) => one.sha256 === sha256);
  return same.length === 0 ? null : { sessions: same.length, lastAtMs: Math.max(...same.map(({ atMs }) => atMs)) };
}
