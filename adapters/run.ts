import { randomInt } from 'node:crypto';
import { systemClock } from '../device/clock.ts';
import { readConfig } from './config.ts';
import { fromFolder } from './folder.ts';
import { Forwarder } from './forward.ts';
import { fromMqtt } from './mqtt.ts';

const chance = { uniform: () => randomInt(2 ** 32) / 2 ** 32 };

/**
 * Runs the adapter that a file describes until it is told to stop. `print` gets every sentence that a person should read.
 * @returns how many frames were stored and how many refused
 * @throws {AdapterFailure} when the file will not do, or broker or door will never have it
 */
export async function runAdapter(file: string, print: (line: string) => void, stop: AbortSignal): Promise<{ readonly stored: number; readonly refused: number }> {
  const { server, hello, from } = readConfig(file);
  const forwarder = new Forwarder({ url: server, hello, hasHeartbeats: from.kind === 'mqtt', clock: systemClock, chance, print });
  if (from.kind === 'folder') await fromFolder(from.folder, forwarder, print, stop);
  else await fromMqtt({ ...from, clientId: `offpace-${hello.mound}-${hello.device}` }, forwarder, print, stop);
  return forwarder.answered;
}
