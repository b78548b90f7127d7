import type { ImportReport } from '../../core/facts/import-wire.ts';
import { sessionsIn, type Ledger } from '../../core/session/ledger.ts';
import type { FactLog } from '../log/fact-log.ts';

/** A session that came out of a file: which file, and when. */
export interface EarlierImport {
  readonly sha256: string;
  readonly atMs: number;
}

/** Every imported session of a log, read through: for a program that holds no ledgers. */
export function* importsInLog(log: Pick<FactLog, 'mounds' | 'read'>): Generator<EarlierImport> {
  const withdrawn = withdrawnInLog(log);
  for (const mound of log.mounds()) {
    for (const { said, atMs } of log.read(mound, 0)) if (said.kind === 'session-imported' && !withdrawn(mound, said.session)) yield { sha256: said.file.sha256, atMs };
  }
}

/** Tells of imported sessions whether they were taken back; reads the log through once it is asked. */
export function withdrawnInLog(log: Pick<FactLog, 'mounds' | 'read'>): (mound: string, session: string) => boolean {
  let known: ReadonlySet<string> | null = null;
  return (mound, session) => (known ??= read()).has(`${mound} ${session}`);

  function read(): ReadonlySet<string> {
    const found = new Set<string>();
    for (const mound of log.mounds()) for (const { said } of log.read(mound, 0)) if (said.kind === 'import-withdrawn') found.add(`${mound} ${said.session}`);
    return found;
  }
}

export function* importsInLedgers(ledgers: readonly Ledger[]): Generator<EarlierImport> {
  for (const ledger of ledgers) {
    for (const { imported } of sessionsIn(ledger)) if (imported !== undefined) yield { sha256: imported.file.sha256, atMs: imported.atMs };
  }
}

/** What came out of a file of the same bytes before; null where nothing did. */
export function earlierOf(imports: Iterable<EarlierImport>, sha256: string): ImportReport['earlier'] {
  const same = [...imports].filter((one) => one.sha256 === sha256);
  return same.length === 0 ? null : { sessions: same.length, lastAtMs: Math.max(...same.map(({ atMs }) => atMs)) };
}
