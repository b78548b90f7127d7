import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { startServer as StartServer } from '../../server/serve.ts';

const BUILT = new URL('../../dist/node/', import.meta.url);
const PROGRAM = fileURLToPath(new URL('command/main.js', BUILT));

/** The built server, as a test sees it. */
export interface TestServer {
  readonly address: string;
  /** What a device shows at the door. */
  readonly token: string;
  readonly dataFolder: string;
  /** Stops it as Ctrl-C does. */
  stop(): Promise<void>;
}

/** In a process of its own. */
export interface ServerProcess extends TestServer {
  /** Ends it as a power cut does: SIGKILL, with no chance to finish anything. */
  kill(): Promise<void>;
}

type Started = { readonly kind: 'ready'; readonly address: string; readonly tokenFile: string } | { readonly kind: 'failed'; readonly sentence: string };

/** A data folder of its own, and the way to be rid of it. */
export function temporaryFolder(): { readonly folder: string; remove(): void } {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-browser-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/**
 * Starts the built server on a free port, or on the given one, and waits until it is ready. It runs in the process of the test,
 * which has loaded its modules once: a process for each test took a second of every one.
 */
export async function startServer(dataFolder: string, port = 0): Promise<TestServer> {
  const { startServer: start } = (await import(new URL('server/serve.js', BUILT).href)) as { readonly startServer: typeof StartServer };
  const server = await start({ port, host: '127.0.0.1', dataFolder, webFolder: fileURLToPath(new URL('../web', BUILT)), logLevel: 'silent' });
  return { address: server.address, token: readFileSync(server.tokenFile, 'utf8').trim(), dataFolder, stop: () => server.close() };
}

/** As a person starts it: the program in a process of its own, which can be killed, with further options or of another build. */
export async function startProcess(dataFolder: string, port = 0, more: readonly string[] = [], program = PROGRAM): Promise<ServerProcess> {
  const child = fork(program, ['serve', '--json', '--port', String(port), '--data', dataFolder, ...more], { stdio: ['ignore', 'ignore', 'pipe', 'ipc'] });
  const trouble: string[] = [];
  child.stderr!.on('data', (chunk: Buffer) => trouble.push(chunk.toString()));
  const started = await Promise.race([
    once(child, 'message').then(([message]) => message as Started),
    once(child, 'exit').then(([code]): Started => ({ kind: 'failed', sentence: `The server ended with code ${code}. ${trouble.join('')}` })),
  ]);
  if (started.kind === 'failed') throw new Error(started.sentence);
  return {
    address: started.address,
    token: readFileSync(started.tokenFile, 'utf8').trim(),
    dataFolder,
    stop: () => end(child, 'SIGTERM'),
    kill: () => end(child, 'SIGKILL'),
  };
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}
