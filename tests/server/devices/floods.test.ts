import { once } from 'node:events';
import { expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { Floods } from '../../../server/devices/floods.ts';
import { DeviceClient } from '../device-client.ts';
import { summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { serverForTest, type TestServer } from '../running.ts';

const frame = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });
const stored = (sequence: number) => ({ kind: 'stored', sequence });

/** Sends what is refused, so many times, and hears out the answers. */
async function sendForNothing(device: DeviceClient, times: number): Promise<Set<string>> {
  for (let count = 0; count < times; count += 1) device.send({});
  const answers = await Promise.all(Array.from({ length: times }, () => device.next()));
  return new Set(answers.map((answer) => (answer.kind === 'refused' ? answer.code : answer.kind)));
}

async function timesSlowed(server: TestServer): Promise<number> {
  const text = await (await fetch(`${server.address}/metrics`)).text();
  return Number(/^offpace_slowed_total\{door="device"\} (\d+)$/m.exec(text)?.[1] ?? 0);
}

test('a device that floods is slowed, then refused for a minute, and the others are not harmed', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const flooder = (await DeviceClient.greet(server.address, server.token, { device: 'flooder' })).client;
  const other = (await DeviceClient.greet(server.address, server.token, { device: 'eye-2', mound: 'south-2' })).client;
  let thrown = 0;
  const othersAnswer = async (): Promise<void> => expect(await other.ask(frame((thrown += 1)))).toEqual(stored(thrown));

  expect([...(await sendForNothing(flooder, 1000))]).toEqual(['malformed']);
  expect(await timesSlowed(server)).toBe(0);
  await sendForNothing(flooder, 1);
  expect(await timesSlowed(server)).toBe(1);
  // It is read no further for a second: its throw waits, those of others do not.
  flooder.send(frame(1));
  const answered = flooder.next();
  for (let round = 0; round < 20; round += 1) await othersAnswer();
  expect(await Promise.race([answered, Promise.resolve('not yet')])).toBe('not yet');
  clock.advance(1000);
  expect(await answered).toEqual(stored(1));

  for (let round = 2; round <= 10; round += 1) {
    await sendForNothing(flooder, 6);
    await othersAnswer();
    clock.advance(1000);
  }
  expect(await timesSlowed(server)).toBe(10);
  await sendForNothing(flooder, 5);
  expect(await flooder.ask({})).toMatchObject({ kind: 'refused', code: 'flooding', sequence: null, final: false });
  expect(await flooder.closed).toBe(1013);
  await othersAnswer();
  const early = await DeviceClient.greet(server.address, server.token, { device: 'flooder' });
  expect(early.welcome).toMatchObject({ kind: 'refused', code: 'flooding', path: 'device', sequence: null, final: false });
  expect(await early.client.closed).toBe(1013);
  clock.advance(60_000);
  expect((await DeviceClient.greet(server.address, server.token, { device: 'flooder' })).welcome).toMatchObject({ kind: 'welcome', settledThrough: 1 });
});

test('an evening that comes again after an outage is not held against a device, nor is one that comes twice', async () => {
  const server = await serverForTest();
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (let round = 0; round < 2; round += 1) {
    for (let sequence = 1; sequence <= 1500; sequence += 1) client.send(frame(sequence));
    for (let sequence = 1; sequence <= 1500; sequence += 1) expect(await client.next()).toEqual(stored(sequence));
  }
  expect(await timesSlowed(server)).toBe(0);
});

test('from one address only so many connections may stand open without a hello, and a device that has said it goes on', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const { client } = await DeviceClient.greet(server.address, server.token);
  const mute = await Promise.all(Array.from({ length: 256 }, () => DeviceClient.connect(server.address)));
  expect(await statusAtDoor(server)).toBe(503);
  expect(await client.ask(frame(1))).toEqual(stored(1));
  clock.advance(10_000);
  expect(new Set(await Promise.all(mute.map(({ closed }) => closed)))).toEqual(new Set([1008]));
  expect((await DeviceClient.greet(server.address, server.token, { device: 'eye-2', mound: 'south-2' })).welcome).toMatchObject({ kind: 'welcome' });
});

function statusAtDoor(server: TestServer): Promise<number | undefined> {
  const socket = new WebSocket(`${server.address.replace('http', 'ws')}/device`);
  socket.on('error', () => {});
  return once(socket, 'unexpected-response').then(([, response]) => (response as { statusCode?: number }).statusCode);
}

test('a connection that hangs half open is let go after a silent minute', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask(frame(1));
  clock.advance(59_999);
  expect(await client.ask(frame(2))).toEqual(stored(2));
  clock.advance(60_000);
  expect(await client.closed).toBe(1006);
});

test('a large frame costs more, calm makes everything good again, and nobody is kept off for an address that others may have', () => {
  let nowMs = 0;
  const floods = new Floods(() => nowMs);
  const until = (sender: string, bytes: number, mayKeepOff = true): number => {
    for (let count = 1; ; count += 1) if (floods.forNothing(sender, bytes, mayKeepOff) !== 'goes-on') return count;
  };
  expect(until('small', 0)).toBe(1001);
  expect(until('large', 64 * 1024)).toBe(59);
  expect(floods.forNothing('small', 0, true)).toBe('slowed');
  nowMs += 200_000;
  expect(until('small', 0)).toBe(1001);
  for (let round = 0; round < 100; round += 1) {
    nowMs += 1000;
    until('address', 0, false);
    expect(floods.isKeptOff('address')).toBe(false);
    until('small', 0);
    if (floods.isKeptOff('small')) return expect(round).toBe(9);
  }
  return expect.unreachable('A device that goes on flooding was never kept off.');
});
