import { expect, test } from 'vitest';
import { coachAt, openServer } from '../access/open-server.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';
import { serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';
import { keepMetrics } from '../../../server/metrics.ts';

const PASSED_ON = { 'x-forwarded-for': '203.0.113.7' };

/** The value of one line of the text, as a program that gathers counts reads it. */
function valueOf(text: string, series: string): number | undefined {
  const line = text.split('\n').find((one) => one.startsWith(`${series} `));
  return line === undefined ? undefined : Number(line.slice(series.length + 1));
}

test('throws, refusals by door and code, who is connected, the time of an answer and the lag of the event loop can be read', async () => {
  const server = await serverForTest();
  const coach = new ScreenClient(server);
  await coach.watch();
  await coach.say(opened('s-1'));
  await coach.say({ kind: 'session-closed', session: 'nowhere' });
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (const sequence of [1, 2, 3]) await client.ask({ kind: 'throw', sequence, time: sequence, body: summary() });
  await client.ask({ kind: 'correction', sequence: 4, time: 4, corrects: { sequence: 3 }, body: summary(80) });
  await client.ask({ kind: 'throw', sequence: 5, time: 5, body: summary(400) });
  await client.ask('no JSON');
  const response = await fetch(`${server.address}/metrics`);
  expect(response.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
  const text = await response.text();
  const value = (series: string) => valueOf(text, series);
  expect({
    facts: value('offpace_facts_stored_total'),
    throws: value('offpace_throws_stored_total'),
    impossible: value('offpace_refusals_total{door="device",code="impossible"}'),
    notJson: value('offpace_refusals_total{door="device",code="not-json"}'),
    unknownSession: value('offpace_refusals_total{door="screen",code="unknown-session"}'),
    devices: value('offpace_devices'),
    screens: value('offpace_screens'),
    answered: value('offpace_acknowledgement_seconds_count'),
  }).toEqual({ facts: 5, throws: 3, impossible: 1, notJson: 1, unknownSession: 1, devices: 1, screens: 1, answered: 4 });
  expect(value('nodejs_eventloop_lag_p99_seconds')).toBeGreaterThanOrEqual(0);
  expect(value('process_resident_memory_bytes')).toBeGreaterThan(1e6);
  expect(text).not.toMatch(/ana|Ibarra|north-1|eye-1|s-1/);
});

test('the counts are read by a coach and by a program on this machine, and by nobody else', async () => {
  const server = await openServer();
  const here = await fetch(`${server.address}/metrics`);
  expect(here.status).toBe(200);
  const far = await fetch(`${server.address}/metrics`, { headers: PASSED_ON });
  expect([far.status, await far.json()]).toMatchObject([401, { code: 'not-let-in' }]);
  const coach = await coachAt(server);
  expect((await coach.ask('GET', '/metrics', undefined, PASSED_ON)).status).toBe(200);
});

test('anybody may ask whether the server is well, and learns that alone', async () => {
  const server = await openServer();
  const answer = await fetch(`${server.address}/healthz`, { headers: PASSED_ON });
  expect([answer.status, answer.headers.get('cache-control'), await answer.json()]).toEqual([200, 'no-store', { kind: 'healthy' }]);
});

test('a server whose newest write failed is not well until one succeeds', () => {
  const metrics = keepMetrics();
  metrics.refused('device', 'impossible');
  expect(metrics.canStore()).toBe(true);
  metrics.refused('device', 'storage-failed');
  expect(metrics.canStore()).toBe(false);
  metrics.stored({ place: 1, mound: 'north-1', atMs: 1, by: 'coach:this-machine', version: 1, said: opened() });
  expect(metrics.canStore()).toBe(true);
});
