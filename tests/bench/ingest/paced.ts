import { setTimeout } from 'node:timers/promises';
import { frameOf, welcomed } from './stream.ts';

/** What devices throw at a steady pace, whether or not it is answered. */
export interface Paced {
  readonly devices: number;
  /** Of all devices together. */
  readonly perSecond: number;
  readonly eachThrows: number;
  /** A body as JSON. */
  readonly body: string;
}

/**
 * Throws of many devices in turn.
 * @param sent told of every throw of a device as it is handed over
 */
export async function throwAtPace(address: string, token: string, { devices, perSecond, eachThrows, body }: Paced, sent: (device: number, sequence: number) => void): Promise<void> {
  const sockets = await Promise.all(Array.from({ length: devices }, (_, index) => welcomed(address, token, index)));
  const startedMs = performance.now();
  for (let thrown = 0; thrown < devices * eachThrows;) {
    const due = Math.min(devices * eachThrows, ((performance.now() - startedMs) / 1000) * perSecond);
    for (; thrown < due; thrown += 1) {
      const [device, sequence] = [thrown % devices, Math.floor(thrown / devices) + 1];
      sent(device, sequence);
      sockets[device]!.send(frameOf(sequence, body));
    }
    // oxlint-disable-next-line no-await-in-loop -- what comes back is read in between
    await setTimeout(1);
  }
}
