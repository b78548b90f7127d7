import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';
import { brokerHere } from '../../scripts/steps/broker.mjs';
import { folderForTest } from '../server/folder.ts';
import { freePort } from '../server/free-port.ts';

export interface Broker {
  /** Such as mqtt://127.0.0.1:40321. */
  readonly address: string;
}

/** A Mosquitto of its own for the running test, ended afterwards. */
export async function brokerForTest({ letsIn = true } = {}): Promise<Broker> {
  const program = brokerHere(process.env);
  if (program === null) throw new Error('Mosquitto is missing; npm test installs it where it may, otherwise install the package mosquitto, or set OFFPACE_MOSQUITTO to the path of one.');
  const [port, folder] = [await freePort(), folderForTest()];
  const config = path.join(folder, 'mosquitto.conf');
  writeFileSync(config, `listener ${port} 127.0.0.1\nallow_anonymous ${letsIn}\npersistence false\nuser root\nlog_dest stderr\n`);
  const child = spawn(program, ['-c', config], { stdio: ['ignore', 'ignore', 'pipe'] });
  onTestFinished(async () => {
    child.kill();
    if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  });
  const said: string[] = [];
  for await (const line of createInterface({ input: child.stderr })) {
    said.push(line);
    if (line.endsWith(' running')) break;
  }
  if (child.exitCode !== null) throw new Error(`Mosquitto did not start: ${said.join('\n')}`);
  child.stderr.resume();
  return { address: `mqtt://127.0.0.1:${port}` };
}
