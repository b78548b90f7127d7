import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DeviceClient, type RecordedFrame } from '../../device/client.ts';
import { randomFrom } from '../../simulators/random.ts';
import { manualClock, type ManualClock } from '../simulators/manual-clock.ts';
import { HELLO, playServer, type ServerPart } from '../simulators/server-part.ts';

const thrown = (sequence: number): RecordedFrame => ({ kind: 'throw', sequence, time: 1000 + sequence, body: { summary: { releaseSpeed: 80 + sequence } } });

let clock: ManualClock;
let server: ServerPart;
let client: DeviceClient;
let said: string[];
beforeEach(async () => {
  clock = manualClock();
  server = await playServer(clock);
  said = [];
  client = new DeviceClient({ url: server.url, hello: HELLO, clock, random: randomFrom(1, 'reconnect'), print: (line) => said.push(line) });
});
afterEach(async () => {
  client.close();
  await server.close();
});
const throwsHeard = (): number[] => server.heard.flatMap((frame) => (frame.kind === 'throw' ? [frame.sequence] : []));
const hellos = (): number => server.heard.filter(({ kind }) => kind === 'hello').length;
const backAgain = async (before: number): Promise<void> => {
  await disconnected();
  clock.advance(1_000);
  await server.until(() => hellos() > before);
  await server.roundTrip();
};
/** The client knows that its connection is gone once it has a timer for the next one. */
const disconnected = async (): Promise<void> => {
  while (!client.reconnecting) await new Promise((resolve) => setImmediate(resolve));
};

describe('a device', () => {
  it('says hello before anything else and keeps a throw until it is stored', async () => {
    client.record(thrown(1));
    await client.settled();
    expect(server.heard.map(({ kind }) => kind)).toEqual(['hello', 'heartbeat', 'throw']);
    expect(server.facts).toHaveLength(1);
    expect(client.unsettledCount).toBe(0);
  });

  it('lets its heart be heard at once and every two seconds between throws', async () => {
    await server.until(() => hellos() === 1);
    await server.roundTrip();
    clock.advance(6_100);
    await server.until(() => server.heard.length === 5);
    expect(server.heard.slice(1)).toEqual([0, 2_000, 4_000, 6_000].map((laterMs) => ({ kind: 'heartbeat', time: 1_750_000_000_000 + laterMs })));
  });

  it('sends again, after a broken connection, what was not stored, and nothing else', async () => {
    client.record(thrown(1));
    await client.settled();
    server.answering = () => null;
    client.record(thrown(2));
    client.record(thrown(3));
    await server.until(() => throwsHeard().length === 3);
    server.answering = undefined;
    server.cut();
    await backAgain(1);
    await client.settled();
    expect(throwsHeard()).toEqual([1, 2, 3, 2, 3]);
    expect(server.facts).toHaveLength(3);
    expect(said).toContain('device: sends 2 again that the server does not have');
  });

  it('forgets what a welcome calls settled, and fills the gap that it names', async () => {
    server.answering = () => null;
    for (const sequence of [1, 2, 3]) client.record(thrown(sequence));
    await server.until(() => throwsHeard().length === 3);
    server.answering = undefined;
    server.storeSilently(HELLO, [1, 3]);
    server.cut();
    await backAgain(1);
    await client.settled();
    expect(throwsHeard().slice(3)).toEqual([2, 3]);
    expect(server.facts).toHaveLength(3);
  });

  it('lets go of a number that is finally refused, and tries a number again that is refused for now', async () => {
    server.answering = ({ sequence }) => ({ kind: 'refused', sequence, code: sequence === 1 ? 'impossible' : 'storage-failed', path: '', sentence: 'No.', final: sequence === 1 });
    client.record(thrown(1));
    client.record(thrown(2));
    await server.until(() => throwsHeard().length === 2);
    await server.roundTrip();
    expect(client.unsettledCount).toBe(1);
    server.answering = undefined;
    clock.advance(3_000);
    await client.settled();
    expect(throwsHeard()).toEqual([1, 2, 2]);
    expect(server.facts).toHaveLength(1);
  });

  it('connects anew when an answer does not come for ten seconds', async () => {
    server.answering = () => null;
    client.record(thrown(1));
    await server.until(() => throwsHeard().length === 1);
    server.answering = undefined;
    clock.advance(10_000);
    await backAgain(1);
    await client.settled();
    expect(server.facts).toHaveLength(1);
  });

  it('waits longer after each failure, ten seconds at most', async () => {
    const { backoffMs } = await import('../../device/backoff.ts');
    const middle = { uniform: () => 0.5, normal: () => 0 };
    expect([1, 2, 3, 4, 5, 6, 9].map((failures) => Math.round(backoffMs(failures, middle)))).toEqual([400, 800, 1_600, 3_200, 6_400, 10_000, 10_000]);
  });

  it('says nothing while it is silent, and then everything', async () => {
    await server.until(() => hellos() === 1);
    await server.roundTrip();
    client.fallSilent(8_000);
    client.record(thrown(1));
    clock.advance(7_900);
    await server.roundTrip();
    expect(server.heard.map(({ kind }) => kind)).toEqual(['hello', 'heartbeat']);
    clock.advance(200);
    await client.settled();
    expect(throwsHeard()).toEqual([1]);
  });
});
