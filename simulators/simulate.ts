import { readFileSync } from 'node:fs';
import { systemClock } from '../device/clock.ts';
import { openTablet } from './coach.ts';
import { runMound } from './mound.ts';
import type { Options } from './options.ts';

/** Wires one simulated mound to a server and throws until it is stopped or has thrown its count. Returns a sentence when it had to give up. */
export async function simulate(options: Options, print: (line: string) => void, stop: AbortSignal): Promise<string | null> {
  const token = readToken(options.tokenFile);
  if (token === null) return `The token file ${options.tokenFile} cannot be read or is empty; start the server first, which writes it and prints where it is.`;
  const name = systemClock.nowMs().toString(36);
  print(`mound ${options.mound}: seed ${options.seed}, ${options.athletes.map(({ profile }) => profile.name).join(', then ')}, faults ${options.faults.join(', ') || 'none'}`);
  const tablet = openTablet(viewersAddress(options.url), options.mound, `simulated-${name}`, print);
  const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const trouble = await runMound({ options, token, name, print, tablet, timeZone, clock: systemClock, stop });
  tablet.close();
  return trouble === null ? null : `The simulated mound gave up: ${trouble}`;
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
