import type { Command } from 'commander';
import { fileURLToPath } from 'node:url';
import type { RunningServer } from '../server/serve.ts';
import { Failure } from './failure.ts';
import { readingLine, readyLines } from './ready-lines.ts';
import { tlsOf, withServing, type Serving } from './serving.ts';
import { aborted, askedToStop } from './stop.ts';
import { remark, say, sayJson } from './talk.ts';
import { amount, wholeNumber } from './values.ts';

const SCREENS = new URL('../../web', import.meta.url);
const LARGEST_SEED = 2 ** 32 - 1;

export function addServe(program: Command, home: string): void {
  withServing(program.command('serve'), home, 'data/own')
    .description('Serves the screens and takes what devices send, until Ctrl-C.')
    .addHelpText('after', `
Examples:
  offpace serve
  offpace serve --port 8100 --data bullpen
  offpace serve --host 0.0.0.0 --passphrase-file passphrase.txt --tls`)
    .action((asked: Serving) => serve(asked, 'no simulated mound', null));
}

interface Started extends Serving {
  readonly interval: number;
  readonly seed: number;
}

export function addStart(program: Command, home: string): void {
  withServing(program.command('start'), home, 'data/demo')
    .description('Serves as `serve` does, with one simulated mound that throws: to look around.')
    .option('--interval <seconds>', 'between two simulated throws', amount('--interval', 'a number of seconds', 0.1, 3600), 6)
    .option('--seed <n>', 'the same seed gives the same simulated throws', wholeNumber('--seed', 0, LARGEST_SEED), 1)
    .addHelpText('after', `
Examples:
  offpace start
  offpace start --interval 2 --seed 7`)
    .action((asked: Started) => serve(asked, `a simulated mound throws every ${asked.interval} s, seed ${asked.seed}`, (server, stop) => thrownBeside(server, asked, stop)));
}

/** Something that runs beside the server and ends by the signal, before the server does. */
type Beside = (server: RunningServer, stop: AbortSignal) => Promise<void>;

async function serve(asked: Serving, mound: string, beside: Beside | null): Promise<void> {
  const { port, host, data, passphraseFile, json } = asked;
  const tls = tlsOf(asked);
  const stop = askedToStop();
  const [{ startServer }, { StartFailure }, { askPassphrase }] = await Promise.all([import('../server/serve.ts'), import('../server/start-failure.ts'), import('../server/access/ask-passphrase.ts')]);
  const somebodySitsHere = process.stdin.isTTY && process.stderr.isTTY;
  const server = await startServer({
    stop, onReading: (so) => void (json ? null : remark(readingLine(so))), port, host, dataFolder: data, webFolder: fileURLToPath(SCREENS), ...(passphraseFile === undefined ? {} : { passphraseFile }), ...(tls === undefined ? {} : { tls }),
    ...(somebodySitsHere ? { askPassphrase: () => askPassphrase({ input: process.stdin, output: process.stderr }) } : {}),
  }).catch((error: unknown) => {
    if (stop.aborted && error === stop.reason) return null;
    throw error instanceof StartFailure ? new Failure(error.message) : error;
  });
  if (server === null) return json ? undefined : say('Stopped before all records were read; the next start goes on from there.');
  const { address, tokenFile, exposed } = server;
  const ready = { kind: 'ready', address, tokenFile, exposed };
  process.send?.(ready);
  if (json) sayJson(ready);
  else for (const line of readyLines(server, data, mound)) say(line);
  const running = beside?.(server, stop);
  await aborted(stop);
  if (!json) say('Stopping …');
  await running;
  await server.close();
  if (!json) say('Stopped.');
}

/** Over the wire, as any device throws; when it fails the server goes on. */
async function thrownBeside({ address, tokenFile }: RunningServer, { interval, seed }: Started, stop: AbortSignal): Promise<void> {
  const [{ simulate }, { ATHLETES }] = await Promise.all([import('../simulators/simulate.ts'), import('../simulators/athletes.ts')]);
  const options = { url: `${address.replace(/^http/, 'ws')}/device`, tokenFile, mound: 'north-1', athletes: ATHLETES, seed, intervalMs: interval * 1000, count: null, faults: [], coach: true };
  const trouble = await simulate(options, (line) => say(`simulator | ${line}`), stop).catch((error: Error) => error.stack ?? error.message);
  if (trouble !== null) say(`The simulated mound stopped by itself (${trouble}); the server goes on without it.`);
}
