import { readFileSync } from 'node:fs';
import { readyServer, type ReadyServer } from '../server/forked.ts';
import { folderForTest } from '../server/folder.ts';

export interface UnderFire extends ReadyServer {
  readonly token: string;
  /** Resident memory in bytes. */
  memoryBytes(): number;
  /** Complaints of the server about itself: what it wrote of a fault, and whether it still lives. */
  faults(): string[];
}

/** The built server as its own process, so that a crash, an unhandled rejection or growing memory is its own and is seen. */
export async function serverUnderFire(): Promise<UnderFire> {
  const server = await readyServer(['--port', '0', '--data', folderForTest()]);
  const { child, tokenFile, logged } = server;
  return {
    ...server,
    token: readFileSync(tokenFile, 'utf8').trim(),
    memoryBytes: () => 1024 * Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))![1]),
    faults: () => [...logged().filter((line) => /"level":(?:50|60)/.test(line)), ...(child.exitCode === null && child.signalCode === null ? [] : [`The server ended: code ${child.exitCode}, signal ${child.signalCode}`])],
  };
}
