import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { DeviceClient } from '../device-client.ts';
import type { ReadyServer } from '../forked.ts';
import { opened, summary } from '../frames.ts';
import { ScreenClient } from '../screen-client.ts';

const ASKED = ['/', '/wall/north-1', '/bench/north-1', '/glance/north-1', '/plan/north-1', '/trials/ana-1', '/playback', '/report/s-1', '/healthz', '/metrics', '/api/athletes', '/api/athletes/ana-1/records', '/api/sessions/found', '/api/sessions/s-1'];

/** A coach, a device and everything that can be asked for, from the first hello until the server has stopped. */
export async function wholeEvening(server: ReadyServer): Promise<void> {
  const coach = new ScreenClient(server as never);
  await coach.watch();
  expect(await coach.say(opened('s-1'))).toMatchObject({ kind: 'stored' });
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  for (let sequence = 1; sequence <= 10; sequence += 1) expect(await client.ask({ kind: 'throw', sequence, time: sequence, body: summary() })).toEqual({ kind: 'stored', sequence });
  for (const address of ASKED) expect((await fetch(`${server.address}${address}`)).status).toBe(200);
  expect(await coach.say({ kind: 'session-closed', session: 's-1' })).toMatchObject({ kind: 'stored' });
  await client.leave();
  coach.socket.close();
  // Under strace a signal would reach strace; that the program which started it is gone reaches the server.
  server.child.disconnect();
  await server.ended;
}
