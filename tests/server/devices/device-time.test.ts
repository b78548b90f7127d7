import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import type { Clock } from '../../../server/clock.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest, type TestServer } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const HOUR_MS = 3_600_000;
const START_MS = 1_700_000_000_000;
/** A device whose clock jumps a year ahead, back behind 1970, and on again; and one that stands still. */
const DEVICE_TIMES = [START_MS, START_MS + 8760 * HOUR_MS, -5, START_MS + 9000, START_MS + 9000, 0];

test('a device whose clock jumps reorders nothing: its time, the time of arrival and the order are kept apart', async () => {
  const clock = handClock(START_MS);
  const { server, screen, client } = await sessionUnder(clock);
  for (const [index, time] of DEVICE_TIMES.entries()) {
    clock.advance(1000);
    expect(await client.ask({ kind: 'throw', sequence: index + 1, time, body: summary(80 + index) })).toEqual({ kind: 'stored', sequence: index + 1 });
  }
  const places = DEVICE_TIMES.map((_, index) => index + 2);
  await screen.atPlace(places.at(-1)!);
  const { facts } = await get<{ facts: Fact[] }>(server, '/api/sessions/s-1');
  const throws = facts.flatMap(({ place, atMs, said }) => (said.kind === 'throw-measured' ? [{ place, atMs, deviceMs: said.source.time }] : []));
  expect(throws).toEqual(DEVICE_TIMES.map((deviceMs, index) => ({ place: index + 2, atMs: START_MS + 1000 * (index + 1), deviceMs })));
  expect(screen.view?.throws.map(({ place }) => place)).toEqual(places);
  expect(screen.view?.throws.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(screen.view?.session?.counts.all).toBe(DEVICE_TIMES.length);
});

test('a server whose own clock is set back goes on in the order of the log', async () => {
  const clock = handClock(START_MS);
  const { server, screen, client } = await sessionUnder(clock);
  for (const [index, back] of [0, HOUR_MS, 2 * HOUR_MS].entries()) {
    clock.advance(-back);
    await client.ask({ kind: 'throw', sequence: index + 1, time: 1000 * index, body: summary(80 + index) });
  }
  await screen.atPlace(4);
  const { facts } = await get<{ facts: Fact[] }>(server, '/api/sessions/s-1');
  expect(facts.map(({ place }) => place)).toEqual([1, 2, 3, 4]);
  expect(facts.at(-1)!.atMs).toBeLessThan(facts[0]!.atMs);
  expect(screen.view?.throws.map(({ place }) => place)).toEqual([2, 3, 4]);
});

/** A server under this clock with a session open, a screen that watches it, and a device. */
async function sessionUnder(clock: Clock): Promise<{ server: TestServer; screen: ScreenClient; client: DeviceClient }> {
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.say(opened());
  const { client } = await DeviceClient.greet(server.address, server.token);
  return { server, screen, client };
}
