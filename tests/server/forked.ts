import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const MAIN = fileURLToPath(new URL('../../dist/node/command/main.js', import.meta.url));

interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly errors: string;
}

type FirstWord = { readonly kind: 'ready'; readonly address: string; readonly tokenFile: string } | { readonly kind: 'failed'; readonly sentence: string };

export interface ForkedServer {
  readonly child: ChildProcess;
  /** What it says to the program that started it. */
  readonly firstWord: Promise<FirstWord>;
  readonly ended: Promise<Ended>;
  /** The lines of its log so far. */
  logged(): string[];
}

/** How a server is run where that is the point: by another build of it, or under a program that watches it. */
export interface RunBy {
  readonly main?: string;
  /** A program and its arguments, before those of Node. */
  readonly under?: readonly [program: string, ...args: string[]];
}

/** The built server as a process of its own, killed with the test at the latest. */
export function forkServer(args: readonly string[], { main = MAIN, under }: RunBy = {}): ForkedServer {
  if (!existsSync(main)) throw new Error(`${main} is missing; run npm run build first.`);
  const [execPath, ...execArgv] = under === undefined ? [process.execPath] : [...under, process.execPath];
  const child = fork(main, ['serve', '--json', ...args], { execPath: execPath!, execArgv, stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let [errors, log] = ['', ''];
  child.stdout!.on('data', (text: Buffer) => {
    log += text.toString('utf8');
  });
  child.stderr!.on('data', (text: Buffer) => {
    errors += text.toString('utf8');
  });
  const ended = Promise.all([once(child, 'exit'), once(child.stderr!, 'close')]).then(([[code, signal]]): Ended => ({ code, signal, errors }));
  const said = new Promise<FirstWord>((resolve) => child.once('message', (message) => resolve(message as FirstWord)));
  const died = ended.then(({ code, signal, errors: last }): FirstWord => ({ kind: 'failed', sentence: `The server ended without a word (code ${code}, signal ${signal}): ${last}` }));
  return { child, firstWord: Promise.race([said, died]), ended, logged: () => log.split('\n') };
}

export type ReadyServer = ForkedServer & { readonly address: string; readonly tokenFile: string };

export async function readyServer(args: readonly string[], by?: RunBy): Promise<ReadyServer> {
  const server = forkServer(args, by);
  const word = await server.firstWord;
  if (word.kind === 'failed') throw new Error(word.sentence);
  return { ...server, address: word.address, tokenFile: word.tokenFile };
}
