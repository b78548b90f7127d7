import { readFileSync } from 'node:fs';
import { systemClock } from '../device/clock.ts';
import { openTablet } from './coach.ts';
import { runMound } from './mound.ts';
import { readOptions, type Options } from './options.ts';

/** The composition root: reads what was typed, wires one simulated mound to the server, starts, stops. */
const read = readOptions(process.argv.slice(2));
switch (read.kind) {
  case 'help':
    process.stdout.write(read.text);
    break;
  case 'wrong':
    process.stderr.write(`${read.sentence}\n`);
    process.exitCode = 2;
    break;
  case 'run':
    process.exit(await run(read.options));
}

async function run(options: Options): Promise<number> {
  const print = (line: string): void => void process.stdout.write(`${line}\n`);
  const token = readToken(options.tokenFile);
  if (token === null) {
    process.stderr.write(`The token file ${options.tokenFile} cannot be read or is empty; start the server first, which writes it and prints where it is.\n`);
    return 1;
  }
  const stopping = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'disconnect'] as const) process.once(signal, () => stopping.abort());

  const name = systemClock.nowMs().toString(36);
  print(`mound ${options.mound}: seed ${options.seed}, ${options.athletes.map(({ profile }) => profile.name).join(', then ')}, faults ${options.faults.join(', ') || 'none'}`);
  const tablet = openTablet(viewersAddress(options.url), options.mound, `simulated-${name}`, print);
  const trouble = await runMound({
    options, token, name, print, tablet,
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    clock: systemClock,
    stop: stopping.signal,
  });
  tablet.close();
  if (trouble === null) return 0;
  process.stderr.write(`The simulated mound gave up: ${trouble}\n`);
  return 1;
}

function readToken(file: string): string | null {
  try {
    return readFileSync(file, 'utf8').trim() || null;
  } catch {
    return null;
  }
}

/** Devices and viewers have one address; only the way to speak differs. */
function viewersAddress(door: string): string {
  const address = new URL(door);
  return `${address.protocol === 'wss:' ? 'https' : 'http'}://${address.host}`;
}
