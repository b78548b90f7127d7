import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { DeviceClient } from '../../device/client.ts';
import { deliveryBy, type Delivery } from '../../simulators/delivery.ts';
import { FAULT_NAMES, faultOfNext, type Fault } from '../../simulators/faults.ts';
import { misread } from '../../simulators/misread.ts';
import { randomFrom, type Random } from '../../simulators/random.ts';
import { manualClock, type ManualClock } from './manual-clock.ts';
import { HELLO, playServer, type ServerPart } from './server-part.ts';

const body = (speed: number): ThrowBody => ({ summary: { releaseSpeed: speed }, spin: { rate: 1700, tilt: 60, efficiency: 0.9 } });

let clock: ManualClock;
let server: ServerPart;
let client: DeviceClient;
let said: string[];
beforeEach(async () => {
  clock = manualClock();
  server = await playServer(clock);
  said = [];
  client = new DeviceClient({ url: server.url, hello: HELLO, clock, random: randomFrom(1, 'reconnect'), print: () => {} });
  await server.until(() => server.heard.length === 2);
  await server.roundTrip();
});
afterEach(async () => {
  client.close();
  await server.close();
});

/** Chance that strikes the throws with these numbers, each with the only fault there is. */
function strikes(numbers: readonly number[]): Random {
  let draws = 0;
  let throws = 0;
  const after = randomFrom(1, 'after');
  return {
    uniform: () => {
      draws += 1;
      if (draws % 2 === 0) return 0;
      throws += 1;
      return numbers.includes(throws) ? 0 : 0.99;
    },
    normal: after.normal,
  };
}
function delivering(fault: Fault, ...numbers: number[]): Delivery {
  return deliveryBy({ client, faults: [fault], random: strikes(numbers), print: (line) => said.push(line) });
}
const measured = (): [sequence: number, speed: number | undefined][] =>
  server.heard.flatMap((frame) => (frame.kind === 'throw' ? [[frame.sequence, frame.body.summary?.releaseSpeed] as [number, number | undefined]] : []));

describe('faults on request', () => {
  it('repeated: the same frame comes twice and is stored once', async () => {
    const delivery = delivering('repeated', 2);
    for (const speed of [80, 81, 82]) delivery.deliver(clock.nowMs(), body(speed));
    await client.settled();
    await server.roundTrip();
    expect(measured()).toEqual([[1, 80], [2, 81], [2, 81], [3, 82]]);
    expect(server.facts).toHaveLength(3);
    expect(said).toEqual(['device: fault repeated at throw 2']);
  });

  it('late: a throw comes after the one that follows it, with its own number and time', async () => {
    const delivery = delivering('late', 2);
    for (const speed of [80, 81, 82, 83]) {
      delivery.deliver(clock.nowMs(), body(speed));
      clock.advance(1_000);
    }
    await client.settled();
    expect(measured()).toEqual([[1, 80], [3, 82], [2, 81], [4, 83]]);
    const times = server.heard.flatMap((frame) => (frame.kind === 'throw' ? [frame.time] : []));
    expect(times[2]).toBeLessThan(times[1]!);
  });

  it('late at the very end: nothing is left behind', async () => {
    const delivery = delivering('late', 1);
    delivery.deliver(clock.nowMs(), body(80));
    expect(delivery.handedOver).toBe(0);
    delivery.finish();
    await client.settled();
    expect(measured()).toEqual([[1, 80]]);
  });

  it('corrected: a wrong throw is followed by a frame that puts it right', async () => {
    const delivery = delivering('corrected', 1);
    delivery.deliver(clock.nowMs(), body(80));
    delivery.deliver(clock.nowMs(), body(81));
    await client.settled();
    const [first] = server.facts;
    expect(first?.said.kind === 'throw-measured' && first.said.body).not.toEqual(body(80));
    const correction = server.heard.find(({ kind }) => kind === 'correction');
    expect(correction).toMatchObject({ sequence: 3, corrects: { sequence: 1 }, body: body(80) });
    expect(server.view().unclaimed.map(({ corrected }) => corrected)).toEqual([true, false]);
    expect(delivery.handedOver).toBe(3);
  });

  it('misread: a wrong throw stays wrong', async () => {
    const delivery = delivering('misread', 1);
    delivery.deliver(clock.nowMs(), body(80));
    delivery.finish();
    await client.settled();
    expect(server.facts).toHaveLength(1);
    const said = server.facts[0]!.said;
    expect(said.kind === 'throw-measured' && said.body).not.toEqual(body(80));
  });

  it('dropped: the connection breaks after the throw, and the throw is stored exactly once all the same', async () => {
    const delivery = delivering('dropped', 2);
    for (const speed of [80, 81, 82]) delivery.deliver(clock.nowMs(), body(speed));
    while (!client.reconnecting) await new Promise((resolve) => setImmediate(resolve));
    clock.advance(1_000);
    await client.settled();
    expect(server.connections).toBe(2);
    expect(server.facts.map(({ said }) => said.kind === 'throw-measured' && said.source.sequence).sort()).toEqual([1, 2, 3]);
  });

  it('silent: nothing is heard for eight seconds, neither heart nor throw, over one connection', async () => {
    const delivery = delivering('silent', 1);
    delivery.deliver(clock.nowMs(), body(80));
    clock.advance(6_000);
    delivery.deliver(clock.nowMs(), body(81));
    clock.advance(1_900);
    await server.roundTrip();
    expect(server.heard.map(({ kind }) => kind)).toEqual(['hello', 'heartbeat']);
    clock.advance(200);
    await client.settled();
    expect(measured()).toEqual([[1, 80], [2, 81]]);
    expect(server.connections).toBe(1);
  });

  it('strikes one throw in six, each wanted fault about as often, and none when none is wanted', () => {
    const random = randomFrom(4, 'faults');
    const struck = Array.from({ length: 6_000 }, () => faultOfNext(FAULT_NAMES, random)).filter((fault) => fault !== null);
    expect(Math.abs(struck.length - 1_000)).toBeLessThan(4 * Math.sqrt(6_000 * (1 / 6) * (5 / 6)));
    for (const name of FAULT_NAMES) expect(struck.filter((fault) => fault === name).length).toBeGreaterThan(110);
    expect(Array.from({ length: 100 }, () => faultOfNext([], random)).every((fault) => fault === null)).toBe(true);
  });

  it('a misread is a spin counted twice or a speed far too low, in each of the three shapes', () => {
    const random = randomFrom(1, 'misread');
    const path = Array.from({ length: 60 }, (_, index) => [index / 100, 0, 50 - index, 5] as [number, number, number, number]);
    const shapes: ThrowBody[] = [body(80), { path, spin: { rate: 1700 } }, { constant: { start: [0, 50, 6], velocity: [0, -40, 0], acceleration: [0, 8, -5], distance: 50 }, spin: { rate: 1700 } }];
    for (const right of shapes) {
      const wrongs = Array.from({ length: 40 }, () => misread(right, random));
      expect(wrongs.some(({ spin }) => spin?.rate === 3400)).toBe(true);
      expect(wrongs.some(({ spin, ...flight }) => spin?.rate === 1700 && JSON.stringify(flight) !== JSON.stringify({ ...right, spin: undefined }))).toBe(true);
      expect(wrongs.every((wrong) => JSON.stringify(wrong) !== JSON.stringify(right))).toBe(true);
    }
  });
});
