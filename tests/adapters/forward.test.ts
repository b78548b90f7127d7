import { afterEach, beforeEach, expect, test } from 'vitest';
import { Forwarder } from '../../adapters/forward.ts';
import type { RecordedFrame } from '../../device/client.ts';
import { randomFrom } from '../../simulators/random.ts';
import { manualClock, type ManualClock } from '../simulators/manual-clock.ts';
import { playServer, type ServerPart } from '../simulators/server-part.ts';
import { DEVICE } from './adapting.ts';

const BEHIND_MS = 3_600_000;
const thrown = (sequence: number): RecordedFrame => ({ kind: 'throw', sequence, time: 1000 * sequence, body: { summary: { releaseSpeed: 80 } } });

let clock: ManualClock;
let server: ServerPart;
let forwarder: Forwarder;
let told: (line: string) => void;
/** Resolves at the next line like this. */
const said = (words: RegExp): Promise<void> => new Promise((resolve) => (told = (line) => words.test(line) && resolve()));
beforeEach(async () => {
  told = () => {};
  clock = manualClock();
  server = await playServer(clock);
  forwarder = new Forwarder({ url: server.url, hello: { kind: 'hello', protocol: 1, token: 'secret', ...DEVICE }, hasHeartbeats: true, clock, chance: randomFrom(1, 'adapter'), print: (line) => told(line) });
});
afterEach(async () => {
  forwarder.close();
  await server.close();
});
const heard = (kind: string) => server.heard.filter((frame) => frame.kind === kind);

test('heartbeats carry the clock of the device, and end when the device does', async () => {
  forwarder.heartbeat('run-1', clock.nowMs() - BEHIND_MS);
  await server.until(() => heard('heartbeat').length === 1);
  clock.advance(4_000);
  await server.until(() => heard('heartbeat').length === 3);
  expect(heard('heartbeat')).toEqual([0, 2_000, 4_000].map((laterMs) => ({ kind: 'heartbeat', time: 1_750_000_000_000 - BEHIND_MS + laterMs })));
  clock.advance(10_000);
  await server.roundTrip();
  expect(heard('heartbeat')).toHaveLength(3);
});

test('a device that is silent for half a minute is taken off its mound, and comes back when it is heard', async () => {
  forwarder.heartbeat('run-1', 1000);
  await server.until(() => heard('hello').length === 1);
  clock.advance(30_000);
  forwarder.heartbeat('run-1', 40_000);
  await server.until(() => heard('hello').length === 2);
  expect(server.connections).toBe(2);
});

test('a frame whose answer was lost is answered when it comes again, though the welcome says that it is settled', async () => {
  server.answering = () => null;
  const answer = forwarder.forward('run-1', thrown(1));
  await server.until(() => heard('throw').length === 1);
  server.storeSilently({ kind: 'hello', protocol: 1, token: 'secret', run: 'run-1', ...DEVICE }, [1]);
  server.answering = undefined;
  server.cut();
  await said(/the connection broke/);
  clock.advance(500);
  expect(await answer).toEqual({ kind: 'stored' });
});

test('a correction of what is not stored is refused at once, because what is sent in order has nothing before it', async () => {
  server.answering = ({ sequence }) => ({ kind: 'refused', sequence, code: 'nothing-to-correct', path: 'corrects', sentence: 'Number 9 is not stored yet.', final: false });
  expect(await forwarder.forward('run-1', thrown(1))).toEqual({ kind: 'refused', code: 'nothing-to-correct', path: 'corrects', sentence: 'Number 9 is not stored yet.' });
});

test('closing it ends the wait for an answer', async () => {
  server.answering = () => null;
  const answer = forwarder.forward('run-1', thrown(1));
  await server.until(() => heard('throw').length === 1);
  forwarder.close();
  expect(await answer).toBeNull();
});
