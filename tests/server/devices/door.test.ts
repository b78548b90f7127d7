import { readFileSync, statSync } from 'node:fs';
import Database from 'libsql';
import path from 'node:path';
import { io } from 'socket.io-client';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import type { DeviceState } from '../../../core/facts/wire.ts';
import { DeviceClient } from '../device-client.ts';
import { hello, opened, path as pathBody, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest, type TestServer } from '../running.ts';

const frame = (sequence: number, body: unknown = summary(), more: object = {}) => ({ kind: 'throw', sequence, time: 1000 * sequence, body, ...more });
const correction = (sequence: number, original: number, body: unknown = summary(80), more: object = {}) =>
  ({ kind: 'correction', sequence, time: 1000 * sequence, corrects: { sequence: original }, body, ...more });
const stored = (sequence: number) => ({ kind: 'stored', sequence });

async function greeted(server: TestServer, more: Parameters<typeof hello>[1] = {}) {
  return (await DeviceClient.greet(server.address, server.token, more)).client;
}

async function storedFacts(server: TestServer) {
  await server.close();
  const database = new Database(path.join(server.dataFolder, 'facts.db'));
  const rows = database.prepare('SELECT mound, place, said FROM facts ORDER BY entry').all() as { mound: string; place: number; said: string }[];
  database.close();
  return rows.map(({ mound, place, said }) => ({ mound, place, said: JSON.parse(said) as { kind: string; source: { run: string; sequence: number } } }));
}

test('a device is welcomed to an empty log and told that nothing is settled', async () => {
  const server = await serverForTest();
  const { welcome } = await DeviceClient.greet(server.address, server.token);
  expect(welcome).toEqual({ kind: 'welcome', protocol: 1, settledThrough: 0, gaps: [], heartbeatSeconds: 2 });
});

test('a throw is answered once it is on disk, in each of the three shapes', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  expect(await device.ask(frame(1, pathBody()))).toEqual(stored(1));
  expect(await device.ask(frame(2, { constant: { start: [-0.5, 15.24, 1.8], velocity: [1, -38, -1], acceleration: [-2, 8, -6], distance: 15.24 } }))).toEqual(stored(2));
  expect(await device.ask(frame(3, { ...summary(), spin: { rate: 1700, tilt: 70, efficiency: 0.9 } }))).toEqual(stored(3));
  expect((await storedFacts(server)).map(({ said }) => said.source.sequence)).toEqual([1, 2, 3]);
});

test('after a lost 7 with a stored 8 the device learns that 7 is missing, and can still send it', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  for (const sequence of [1, 2, 3, 4, 5, 6, 8]) await device.ask(frame(sequence));
  await device.leave();
  const { client, welcome } = await DeviceClient.greet(server.address, server.token);
  expect(welcome).toMatchObject({ settledThrough: 6, gaps: [[7, 7]] });
  expect(await client.ask(frame(7))).toEqual(stored(7));
  await client.leave();
  expect((await DeviceClient.greet(server.address, server.token)).welcome).toMatchObject({ settledThrough: 8, gaps: [] });
});

test('a refused 7 is settled: the device may forget it, and it stays refused when it comes again', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  for (const sequence of [1, 2, 3, 4, 5, 6]) await device.ask(frame(sequence));
  expect(await device.ask(frame(7, summary(400)))).toMatchObject({ kind: 'refused', sequence: 7, code: 'impossible', path: 'body.summary.releaseSpeed', final: true });
  await device.ask(frame(8));
  expect(await device.ask(frame(7, summary(84)))).toMatchObject({ kind: 'refused', sequence: 7, code: 'refused-before', final: true });
  await device.leave();
  expect((await DeviceClient.greet(server.address, server.token)).welcome).toMatchObject({ settledThrough: 8, gaps: [] });
  expect((await storedFacts(server)).map(({ said }) => said.source.sequence)).toEqual([1, 2, 3, 4, 5, 6, 8]);
});

test('a device that starts again from 1 under a new run loses nothing and overwrites nothing', async () => {
  const server = await serverForTest();
  const first = await greeted(server);
  for (const sequence of [1, 2]) await first.ask(frame(sequence, summary(90)));
  await first.leave();
  const { client, welcome } = await DeviceClient.greet(server.address, server.token, { run: 'run-b' });
  expect(welcome).toMatchObject({ settledThrough: 0, gaps: [] });
  for (const sequence of [1, 2]) expect(await client.ask(frame(sequence, summary(80)))).toEqual(stored(sequence));
  expect((await storedFacts(server)).map(({ said: { source } }) => `${source.run}/${source.sequence}`)).toEqual(['run-a/1', 'run-a/2', 'run-b/1', 'run-b/2']);
});

test('a repeated throw is stored once and answered each time; another content under its number is refused and kept', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  expect(await device.ask(frame(1))).toEqual(stored(1));
  expect(await device.ask(frame(1))).toEqual(stored(1));
  expect(await device.ask(frame(1, summary(85)))).toMatchObject({ kind: 'refused', sequence: 1, code: 'body-differs', path: 'sequence', final: true });
  expect(await device.ask(frame(1))).toEqual(stored(1));
  expect(await get(server, '/api/health')).toMatchObject({ refusals: { 'body-differs': 1 } });
  expect(await storedFacts(server)).toHaveLength(1);
});

test('a repeated throw is answered as stored even when the stage of now would not allow it', async () => {
  const server = await serverForTest();
  const far = summary(60, { release: [0, 60, 2] });
  const device = await greeted(server);
  expect(await device.ask(frame(1, far))).toEqual(stored(1));
  await coachSays(server, opened());
  expect(await device.ask(frame(2, far))).toMatchObject({ kind: 'refused', code: 'impossible', path: 'body.summary.release', final: true });
  expect(await device.ask(frame(1, far))).toEqual(stored(1));
});

test('a throw that was kept back is not judged by the stage of now', async () => {
  const server = await serverForTest();
  const far = summary(60, { release: [0, 60, 2] });
  await coachSays(server, opened());
  const device = await greeted(server);
  device.send({ kind: 'heartbeat', time: 60_000 });
  expect(await device.ask(frame(1, far, { time: 1000 }))).toEqual(stored(1));
  expect(await device.ask(frame(2, far, { time: 59_000 }))).toMatchObject({ code: 'impossible' });
});

test('a correction is stored behind its throw, settles its number, and answers like a throw', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  await device.ask(frame(1));
  expect(await device.ask(correction(2, 1))).toEqual(stored(2));
  expect(await device.ask(correction(2, 1))).toEqual(stored(2));
  expect(await device.ask(correction(3, 1, summary(400)))).toMatchObject({ code: 'impossible', sequence: 3, final: true });
  expect(await device.ask(correction(5, 4))).toMatchObject({ code: 'nothing-to-correct', sequence: 5, path: 'corrects', final: false });
  await device.leave();
  const { client, welcome } = await DeviceClient.greet(server.address, server.token, { run: 'run-b' });
  expect(welcome).toMatchObject({ settledThrough: 0 });
  expect(await client.ask(correction(1, 1, summary(79), { corrects: { run: 'run-a', sequence: 1 }, reason: 'calibrated anew' }))).toEqual(stored(1));
  const facts = await storedFacts(server);
  expect(facts.map(({ said: { kind } }) => kind)).toEqual(['throw-measured', 'throw-corrected', 'throw-corrected']);
  expect(facts[2]?.said).toMatchObject({ corrects: { run: 'run-a', sequence: 1 }, reason: 'calibrated anew' });
});

test('a throw while no session is open is stored and acknowledged, and shown as unclaimed', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  expect(await device.ask(frame(1))).toEqual(stored(1));
  expect(await get(server, '/api/mounds')).toMatchObject([{ mound: 'north-1', place: 1, openSessions: [], device: { verdict: 'fresh', device: 'eye-1' } }]);
});

test.each([
  ['a release behind the plate', { constant: { start: [0, -1, 1.8], velocity: [0, -38, 0], acceleration: [0, 8, -6], distance: -1 } }, 'malformed', 'body.constant.distance'],
  ['a release behind the plate in a summary', summary(84, { release: [0, -1, 1.8] }), 'impossible', 'body.summary.release'],
  ['a throw of 400 mph', summary(400), 'impossible', 'body.summary.releaseSpeed'],
  ['an infinite speed', '{"summary":{"releaseSpeed":1e999}}', 'malformed', 'body.summary.releaseSpeed'],
  ['two shapes at once', { ...summary(), ...pathBody() }, 'malformed', 'body'],
  ['a broken sample', { path: pathBody().path!.map((sample, index) => (index === 3 ? [...sample.slice(0, 3), 'high'] : sample)) }, 'malformed', 'body.path.3.3'],
  ['a field nobody knows', { ...summary(), sped: 3 }, 'malformed', 'body.sped'],
])('%s is refused with its place in the frame, and the next throw is stored', async (_, body, code, where) => {
  const server = await serverForTest();
  const device = await greeted(server);
  const sent = typeof body === 'string' ? `{"kind":"throw","sequence":1,"time":1,"body":${body}}` : frame(1, body);
  const answer = await device.ask(sent);
  expect(answer).toMatchObject({ kind: 'refused', sequence: 1, code, path: where, final: true });
  expect((answer as { sentence: string }).sentence).toMatch(/^[A-Z].*\.$/);
  expect(await device.ask(frame(2))).toEqual(stored(2));
});

test.each([
  ['no JSON', 'throw me a ball', 'not-json', null, false],
  ['JSON that is no object', '[1, 2]', 'malformed', null, false],
  ['an unknown kind', { kind: 'pitch', sequence: 1, time: 1, body: summary() }, 'malformed', null, false],
  ['a number that is no number', { kind: 'throw', sequence: 'one', time: 1, body: summary() }, 'malformed', null, false],
  ['a second hello', hello('any'), 'hello-twice', null, false],
  ['a frame beyond 64 KiB', { kind: 'throw', sequence: 1, time: 1, body: summary(), padding: 'x'.repeat(70_000) }, 'too-large', 1, true],
])('the connection survives %s', async (_, sent, code, sequence, final) => {
  const server = await serverForTest();
  const device = await greeted(server);
  expect(await device.ask(sent)).toMatchObject({ kind: 'refused', code, sequence, final });
  expect(await device.ask(frame(2))).toEqual(stored(2));
  expect(await get(server, '/api/health')).toMatchObject({ refusals: { [code]: 1 } });
});

test('a binary frame is refused and the connection lives; a frame beyond a mebibyte ends only its connection', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  device.socket.send(Buffer.from(JSON.stringify(frame(1))));
  expect(await device.next()).toMatchObject({ kind: 'refused', code: 'not-text', sequence: null, final: false });
  expect(await device.ask(frame(1))).toEqual(stored(1));
  device.send('x'.repeat(1024 * 1024 + 1));
  expect(await device.closed).toBe(1009);
  const { welcome } = await DeviceClient.greet(server.address, server.token);
  expect(welcome).toMatchObject({ settledThrough: 1 });
});

test('nothing is taken before a hello, but a device can still say it', async () => {
  const server = await serverForTest();
  const device = await DeviceClient.connect(server.address);
  expect(await device.ask(frame(4))).toMatchObject({ kind: 'refused', code: 'hello-first', sequence: 4, final: false });
  expect(await device.ask({ ...hello(server.token), mound: 'north 1' })).toMatchObject({ kind: 'refused', code: 'malformed', path: 'mound', final: false });
  expect(await device.ask(hello(server.token))).toMatchObject({ kind: 'welcome', settledThrough: 0 });
  expect(await device.ask(frame(4))).toEqual(stored(4));
});

test('whoever says anything but hello five times, or nothing for ten seconds, is closed', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const babbler = await DeviceClient.connect(server.address);
  for (let count = 0; count < 5; count += 1) await babbler.ask(frame(1));
  expect(await babbler.closed).toBe(1008);
  const mute = await DeviceClient.connect(server.address);
  clock.advance(10_000);
  expect(await mute.closed).toBe(1008);
});

test('a wrong token and a wrong protocol are refused and closed, and the token is kept nowhere', async () => {
  const server = await serverForTest();
  const stranger = await DeviceClient.greet(server.address, 'a-guessed-token');
  expect(stranger.welcome).toMatchObject({ kind: 'refused', code: 'wrong-token', path: 'token', final: false });
  expect(await stranger.client.closed).toBe(1008);
  const future = await DeviceClient.connect(server.address);
  expect(await future.ask({ ...hello(server.token), protocol: 2 })).toMatchObject({ kind: 'refused', code: 'wrong-protocol', path: 'protocol' });
  expect(await future.closed).toBe(1008);
  await server.close();
  const written = readFileSync(path.join(server.dataFolder, 'facts.db'), 'latin1');
  expect(written).toContain('wrong-token');
  expect(written).not.toContain('a-guessed-token');
  expect(written).not.toContain(server.token);
});

test('the token is made once, is long, and only its owner can read it', async () => {
  const first = await serverForTest();
  expect(first.token).toMatch(/^[0-9a-f]{64}$/);
  expect(statSync(first.tokenFile).mode & 0o777).toBe(0o600);
  await first.close();
  expect((await serverForTest({ dataFolder: first.dataFolder })).token).toBe(first.token);
});

test('a device that connects again takes over from its own old connection', async () => {
  const server = await serverForTest();
  const old = await greeted(server);
  const fresh = await greeted(server);
  expect(await old.closed).toBe(4001);
  expect(await fresh.ask(frame(1))).toEqual(stored(1));
});

test('another device gets a mound only when the first has left it or has fallen silent', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const first = await greeted(server);
  const early = await DeviceClient.greet(server.address, server.token, { device: 'eye-2' });
  expect(early.welcome).toMatchObject({ kind: 'refused', code: 'mound-busy', path: 'mound', final: false, sentence: expect.stringContaining('eye-1') });
  expect(await early.client.closed).toBe(1013);
  clock.advance(5000);
  const second = await greeted(server, { device: 'eye-2' });
  expect(await first.closed).toBe(4001);
  await second.ask(frame(1));
  await second.leave();
  expect((await DeviceClient.greet(server.address, server.token, { device: 'eye-3' })).welcome).toMatchObject({ kind: 'welcome' });
});

test('a device is fresh while anything is heard of it, stale after five silent seconds, and unknown before', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const device = await greeted(server);
  const since = clock.nowMs();
  clock.advance(4000);
  await device.ask(frame(1));
  clock.advance(4999);
  const state = async () => (await get<{ device: DeviceState }[]>(server, '/api/mounds'))[0]?.device;
  expect(await state()).toEqual({ verdict: 'fresh', device: 'eye-1', sinceMs: since });
  clock.advance(1);
  expect(await state()).toEqual({ verdict: 'stale', device: 'eye-1', sinceMs: since + 4000 });
  await device.ask(frame(2));
  expect(await state()).toEqual({ verdict: 'fresh', device: 'eye-1', sinceMs: since + 9000 });
  await server.close();
  const again = await serverForTest({ dataFolder: server.dataFolder });
  expect(await get(again, '/api/mounds')).toMatchObject([{ device: { verdict: 'unknown' } }]);
});

test('a thousand throws sent at once are all stored, each once and in their order', async () => {
  const server = await serverForTest();
  const device = await greeted(server);
  for (let sequence = 1; sequence <= 1000; sequence += 1) device.send(frame(sequence));
  for (let sequence = 1; sequence <= 1000; sequence += 1) expect(await device.next()).toEqual(stored(sequence));
  expect((await storedFacts(server)).map(({ said }) => said.source.sequence)).toEqual(Array.from({ length: 1000 }, (_, index) => index + 1));
});

test.each([
  ['of a foreign page', { origin: 'http://elsewhere.example' }],
  ['under a name that is not ours', { headers: { host: 'rebound.example' } }],
])('a connection %s is turned away before it can speak', async (_, options) => {
  const server = await serverForTest();
  const socket = new WebSocket(`${server.address.replace('http', 'ws')}/device`, options);
  const status = await new Promise((resolve) => {
    socket.on('unexpected-response', (_request, response) => resolve(response.statusCode));
    socket.on('error', () => {});
  });
  expect(status).toBe(403);
});

test('a page of ours may connect', async () => {
  const server = await serverForTest();
  const page = await DeviceClient.connect(server.address, { origin: server.address });
  expect(await page.ask(hello(server.token))).toMatchObject({ kind: 'welcome' });
});

let requests = 0;

async function coachSays(server: TestServer, says: unknown): Promise<void> {
  const screen = io(server.address, { transports: ['websocket'] });
  onTestFinished(() => void screen.close());
  const reply = await screen.emitWithAck('say', { request: `request-${++requests}`, mound: 'north-1', says });
  expect(reply).toMatchObject({ kind: 'stored' });
}
