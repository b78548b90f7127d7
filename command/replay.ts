import type { Command } from 'commander';
import path from 'node:path';
import { throwsOf } from '../core/session/ledger.ts';
import { systemClock } from '../device/clock.ts';
import { Failure } from './failure.ts';
import { breakable } from './stop.ts';
import { progress, remark, say, sayJson } from './talk.ts';
import { amount, doorAddress, place, tokenIn } from './values.ts';

interface Asked {
  readonly session: string;
  readonly data: string;
  readonly from?: string;
  readonly url: string;
  readonly tokenFile: string;
  readonly mound: string;
  readonly speed: number;
  readonly json?: true;
}

export function addReplay(program: Command, home: string): void {
  program.command('replay')
    .description('Throws a recorded session again: through the device door of a server, in its own rhythm or faster.')
    .requiredOption('--session <id>', 'the session')
    .option('--data <folder>', 'where it was recorded; a server may be using it', place('--data'), path.join(home, 'data/own'))
    .option('--from <file>', 'or the facts that `export --format jsonl` wrote, instead of a data folder', place('--from'))
    .requiredOption('--url <address>', 'the device door that it goes to, such as ws://127.0.0.1:8080/device', doorAddress)
    .requiredOption('--token-file <file>', 'file with the token for devices of that server', place('--token-file'))
    .option('--mound <id>', 'the mound that it comes in on', 'replayed-1')
    .option('--speed <n>', 'so many times as fast as it was thrown', amount('--speed', 'a number', 0.01, 100_000), 1)
    .option('--json', 'one line of JSON where a person would read a sentence')
    .addHelpText('after', `
Exit code 1 when a throw was refused.

Examples:
  offpace replay --session evening-1 --url ws://127.0.0.1:8080/device --token-file data/demo/device-token
  offpace replay --session evening-1 --data bullpen --url ws://127.0.0.1:8100/device --token-file trial/device-token --speed 20`)
    .action(replay);
}

async function replay({ session, data, from, url, tokenFile, mound, speed, json }: Asked): Promise<void> {
  const [{ ledgersIn, ledgersOf, ledgerWith }, device, { randomFrom }] = await Promise.all([import('./recorded.ts'), import('../device/replay.ts'), import('../simulators/random.ts')]);
  const throws = throwsOf(ledgerWith(from === undefined ? ledgersIn(data) : await ledgersOf(from), session, from ?? data), session);
  if (throws.length === 0) throw new Failure(`Nobody threw in session ${session}, so there is nothing to replay; name another one.`);
  const token = tokenIn(tokenFile);
  const bar = progress(throws.length, 'throws');
  const run = `replay-${systemClock.nowMs().toString(36)}`;
  const { stored, refused, trouble } = await breakable((stop) => device.replay({
    url, mound, token, run, throws, speed, stop, clock: systemClock, random: randomFrom(1, 'reconnect'), print: remark, onAnswered: bar.at,
  }));
  bar.end();
  if (json) sayJson({ session, mound, run, throws: throws.length, stored, refused });
  else say(`${stored} of ${throws.length} throws of ${session} were stored on ${mound} as ${run}.`);
  if (trouble !== null) throw new Failure(trouble);
  if (refused > 0) throw new Failure(`${refused} ${refused === 1 ? 'throw was' : 'throws were'} refused; the sentences above say why.`);
}
