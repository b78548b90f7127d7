import { expect, test } from 'vitest';
import { rowsOf } from '../files-out/given-out.ts';
import { coachAt, openServer, phoneOf, Browser } from '../access/open-server.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

/** A server on which Ana has thrown three balls. */
async function thrownAt() {
  const server = await serverForTest();
  await new ScreenClient(server).say(opened());
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (const sequence of [1, 2, 3]) await client.ask({ kind: 'throw', sequence, time: 1000 * sequence, body: summary(80 + sequence) });
  return server;
}

test('throws and facts of a session, of an athlete and of all are files that can be asked for', async () => {
  const server = await thrownAt();
  const ask = (address: string): Promise<Response> => fetch(`${server.address}/api${address}`);
  for (const [address, name] of [['/throws', 'throws'], ['/athletes/ana-1/throws', 'ana-1'], ['/sessions/s-1/throws', 's-1']] as const) {
    const csv = await ask(address);
    expect([csv.status, csv.headers.get('content-type'), csv.headers.get('content-disposition')]).toEqual([200, 'text/csv; charset=utf-8', `attachment; filename="offpace-${name}.csv"`]);
    expect(rowsOf(Buffer.from(await csv.arrayBuffer())).map((row) => [row['athlete_name'], row['speed_mph']])).toEqual([['Ana Ibarra', '81'], ['Ana Ibarra', '82'], ['Ana Ibarra', '83']]);
  }
  for (const [address, facts] of [['/facts', 4], ['/athletes/ana-1/facts', 4], ['/sessions/s-1/facts', 4]] as const) {
    const lines = (await (await ask(address)).text()).trimEnd().split('\n');
    expect(JSON.parse(lines[0]!)).toMatchObject({ kind: 'readme', facts });
    expect(lines).toHaveLength(facts + 1);
  }
  const parquet = await ask('/sessions/s-1/throws?format=parquet&units=si&names=no&fromThrow=2');
  expect(parquet.headers.get('content-disposition')).toBe('attachment; filename="offpace-throws.parquet"');
  expect(Buffer.from(await parquet.arrayBuffer()).subarray(0, 4).toString()).toBe('PAR1');
});

test('what cannot be given out is refused with where and why', async () => {
  const server = await thrownAt();
  expect(await get(server, '/api/sessions/s-9/throws')).toMatchObject({ code: 'unknown-session' });
  expect(await get(server, '/api/athletes/nobody/throws')).toMatchObject({ code: 'unknown-athlete' });
  expect(await get(server, '/api/throws?format=xls')).toMatchObject({ code: 'not-a-question', path: 'format' });
  expect(await get(server, '/api/throws?from=yesterday')).toMatchObject({ code: 'not-a-question', path: 'from', sentence: expect.stringContaining('a moment is written as 2026-03-14T17:00:00-05:00') });
  expect(await get(server, '/api/throws?colour=red')).toMatchObject({ code: 'not-a-question' });
});

test('exports are the coach’s alone', async () => {
  const server = await openServer();
  const coach = await coachAt(server);
  await coach.screen().say(opened());
  const phone = await phoneOf(server, coach, 's-1');
  for (const address of ['/throws', '/facts', '/sessions/s-1/throws', '/sessions/s-1/facts', '/athletes/ana-1/throws', '/athletes/ana-1/facts']) {
    expect((await new Browser(server).ask('GET', `/api${address}`)).status).toBe(401);
    expect((await phone.ask('GET', `/api${address}`)).status).toBe(403);
  }
});
