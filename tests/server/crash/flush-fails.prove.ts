import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { said } from '../../proved.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { readyServer } from '../forked.ts';
import { summary } from '../frames.ts';
import { demandStrace, flushFails } from './under-strace.ts';

const FAILING = 4;

beforeAll(demandStrace);

const throwOf = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });

test('after one flush that failed no throw is acknowledged any more, though the next would succeed; a server started anew takes them', async () => {
  const data = folderForTest();
  const failing = await readyServer(['--port', '0', '--data', data], flushFails(FAILING));
  const token = readFileSync(failing.tokenFile, 'utf8').trim();
  const { client } = await DeviceClient.greet(failing.address, token);
  for (let sequence = 1; sequence < FAILING; sequence += 1) expect(await client.ask(throwOf(sequence))).toEqual({ kind: 'stored', sequence });
  for (const sequence of [FAILING, FAILING, FAILING + 1]) {
    expect(await client.ask(throwOf(sequence))).toMatchObject({ kind: 'refused', sequence, code: 'storage-failed', final: false, sentence: expect.stringContaining('nobody knows whether this is stored') as string });
  }
  failing.child.disconnect();
  await failing.ended;

  const anew = await readyServer(['--port', '0', '--data', data]);
  const { client: again } = await DeviceClient.greet(anew.address, token);
  for (const sequence of [FAILING, FAILING + 1]) expect(await again.ask(throwOf(sequence))).toEqual({ kind: 'stored', sequence });
  const [mound] = await (await fetch(`${anew.address}/api/mounds`)).json() as { place: number }[];
  expect(mound!.place).toBe(FAILING + 1);
  said(`flush ${FAILING} failed: it and every throw behind it were refused until the server was started anew, and are there once`);
});
