import type { BroughtImport } from '../../core/facts/import-wire.ts';
import { countedIn } from '../../core/session/counted.ts';
import { sessionIn, thrownBy, type Ledger, type SessionEntry } from '../../core/session/ledger.ts';
import type { Entry, FactLog, StorageFailure } from '../log/fact-log.ts';

interface ImportedSession {
  readonly ledger: Ledger;
  readonly session: SessionEntry;
}

/** The imports that count, newest first: each is all sessions that came out of one file at once, on whatever mounds. */
export function broughtIn(ledgers: readonly Ledger[]): BroughtImport[] {
  return [...byImport(ledgers)].map(([id, sessions]) => {
    const { file, atMs, by } = sessions[0]!.session.imported!;
    return {
      id, atMs, by,
      fileName: file.name,
      sessions: sessions.length,
      throws: throwsIn(sessions),
      athletes: [...new Map(sessions.map(({ session: { athlete } }) => [athlete.id, athlete.name])).values()].sort(),
      mounds: [...new Set(sessions.map(({ ledger }) => ledger.mound))].sort(),
    };
  }).sort((a, b) => b.atMs - a.atMs);
}

function throwsIn(sessions: readonly ImportedSession[]): number {
  return sessions.reduce((sum, { ledger, session }) => sum + (ledger.away[session.id] ?? countedIn(thrownBy(ledger, session.id), session.id)).count, 0);
}

export type WithdrawReply =
  | { readonly kind: 'withdrawn'; readonly sessions: number; readonly throws: number }
  | { readonly kind: 'refused'; readonly code: 'no-such-import' | 'other-file-name'; readonly sentence: string }
  | StorageFailure;

/**
 * Takes an import back as a whole: all of it, or nothing.
 * @param name of its file, said again, so that nobody takes back another one by mistake
 */
export function withdraw(log: Pick<FactLog, 'appendAll'>, ledgers: readonly Ledger[], id: string, name: string, by: string): WithdrawReply {
  const sessions = byImport(ledgers).get(id);
  if (sessions === undefined) return { kind: 'refused', code: 'no-such-import', sentence: 'No import with this id counts here; the list of imports has those that do.' };
  const { file } = sessions[0]!.session.imported!;
  if (file.name.normalize() !== name.normalize()) return { kind: 'refused', code: 'other-file-name', sentence: `The file of this import is called ${file.name}, so nothing was taken back; say the name of the file that is meant.` };
  const throws = throwsIn(sessions);
  const entries = sessions.map(({ ledger: { mound }, session }): Entry => ({ mound, by, said: { kind: 'import-withdrawn', session: session.id } }));
  const reply = log.appendAll(entries);
  switch (reply.kind) {
    case 'stored': return { kind: 'withdrawn', sessions: sessions.length, throws };
    case 'known': throw new Error('A withdrawal has no request that could be known.');
    case 'failed': return reply;
  }
}

function byImport(ledgers: readonly Ledger[]): Map<string, ImportedSession[]> {
  const found = new Map<string, ImportedSession[]>();
  for (const ledger of ledgers) {
    for (const id of ledger.order) {
      const session = sessionIn(ledger, id)!;
      if (session.imported === undefined) continue;
      const of = importOf(id);
      const sessions = found.get(of) ?? [];
      sessions.push({ ledger, session });
      found.set(of, sessions);
    }
  }
  return found;
}

/** Sessions of one import are numbered under its id. */
function importOf(session: string): string {
  return /^imported-(.+)-\d+$/.exec(session)?.[1] ?? session;
}
