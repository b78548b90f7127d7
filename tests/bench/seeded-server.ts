import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Fact } from '../../core/facts/fact.ts';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { startServer, type RunningServer } from '../../server/serve.ts';

const BUILT_SCREENS = fileURLToPath(new URL('../../dist/web', import.meta.url));

/** Writes logs into a new data folder, each run of facts of one session under the time at which it began. */
export async function seededFolder(logs: ReadonlyMap<string, readonly Fact[]>): Promise<{ readonly folder: string; remove(): void }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-bench-'));
  let nowMs = 0;
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => nowMs, newId: () => 'bench', onTrouble: (error) => { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  const { log } = opened;
  for (const sitting of sittingsOf([...logs.values()].flat())) {
    nowMs = sitting[0]!.atMs;
    // oxlint-disable-next-line no-await-in-loop -- one commit for each sitting, in the order in which they were
    const replies = await Promise.all(sitting.map(({ mound, by, said }) => log.append({ mound, by, said })));
    const lost = replies.find(({ kind }) => kind !== 'stored');
    if (lost !== undefined) throw new Error(`A fact of the history was not stored: ${JSON.stringify(lost)}`);
  }
  log.close();
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

function sittingsOf(facts: readonly Fact[]): Fact[][] {
  const sittings: Fact[][] = [];
  for (const fact of facts) {
    if (fact.said.kind === 'session-opened' || sittings.length === 0) sittings.push([]);
    sittings.at(-1)!.push(fact);
  }
  return sittings.sort((a, b) => a[0]!.atMs - b[0]!.atMs);
}

/** A server over a folder, with the screens that were built. */
export function serverOver(folder: string): Promise<RunningServer> {
  return startServer({ port: 0, host: '127.0.0.1', dataFolder: folder, webFolder: BUILT_SCREENS, logLevel: 'silent' });
}
