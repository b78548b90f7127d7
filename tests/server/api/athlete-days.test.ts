import { expect, test } from 'vitest';
import type { AthleteDays } from '../../../core/facts/wire.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest, type TestServer } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const DAY_MS = 86_400_000;

async function throwsOn(server: TestServer, mound: string, run: string, count: number): Promise<void> {
  const { client } = await DeviceClient.greet(server.address, server.token, { mound, run, device: `eye-${mound}` });
  for (let sequence = 1; sequence <= count; sequence += 1) await client.ask({ kind: 'throw', sequence, time: sequence, body: summary() });
}

async function say(screen: ScreenClient, mound: string, says: unknown, request: string): Promise<void> {
  expect(await screen.socket.emitWithAck('say', { request: `request-${request}`, mound, says })).toMatchObject({ kind: 'stored' });
}

test("an athlete's throws are counted by day, stage and effort over all mounds, those of others apart", async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  await say(screen, 'north-1', opened('n-1'), 'n1');
  await throwsOn(server, 'north-1', 'run-a', 3);
  await say(screen, 'north-1', { kind: 'throws-excluded', session: 'n-1', places: [2], reason: 'slipped' }, 'n2');
  clock.advance(DAY_MS);
  await say(screen, 'south-2', opened('s-1', { stage: 'flat-ground', effort: 'easy' }), 's1');
  await throwsOn(server, 'south-2', 'run-a', 2);
  await say(screen, 'north-1', opened('n-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }), 'n3');
  await throwsOn(server, 'north-1', 'run-b', 4);

  const answer = await get<AthleteDays>(server, '/api/athletes/ana-1/days');
  expect(answer.days.map(({ mound, throws }) => [mound, throws])).toEqual([
    ['north-1', [{ stage: 'mound', effort: 'full', count: 3 }]],
    ['south-2', [{ stage: 'flat-ground', effort: 'easy', count: 2 }]],
  ]);
  const [first, second] = answer.days.map(({ day }) => Date.parse(day));
  expect(second! - first!).toBe(DAY_MS);
  expect((await get<AthleteDays>(server, '/api/athletes/ben-2/days')).days.map(({ throws }) => throws[0]?.count)).toEqual([4]);
});

test('pain that was reported at one mound stands at all of them until it is answered', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await say(screen, 'north-1', opened('n-1'), 'n1');
  await say(screen, 'south-2', opened('s-1'), 's1');
  await say(screen, 'south-2', { kind: 'arm-reported', session: 's-1', from: 'bench', said: 'pain', areas: ['elbow'] }, 's2');
  expect(await get<AthleteDays>(server, '/api/athletes/ana-1/days')).toMatchObject({ days: [], pain: { mound: 'south-2', report: { said: 'pain', areas: ['elbow'] } }, soreness: null });
  await say(screen, 'south-2', { kind: 'pain-answered', session: 's-1', answer: 'professional-looked', words: 'Dr. Amari looked' }, 's3');
  expect((await get<AthleteDays>(server, '/api/athletes/ana-1/days')).pain).toBeNull();
});

test('pain of a closed session that was answered for on another mound stands no more', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  await say(screen, 'south-2', opened('s-1'), 's1');
  await say(screen, 'south-2', { kind: 'arm-reported', session: 's-1', from: 'bench', said: 'pain', areas: [] }, 's2');
  await say(screen, 'south-2', { kind: 'session-closed', session: 's-1' }, 's3');
  clock.advance(DAY_MS);
  await say(screen, 'north-1', opened('n-1'), 'n1');
  expect((await get<AthleteDays>(server, '/api/athletes/ana-1/days')).pain).not.toBeNull();
  await say(screen, 'north-1', { kind: 'pain-answered', session: 'n-1', answer: 'professional-looked', words: 'Dr. Amari looked' }, 'n2');
  expect((await get<AthleteDays>(server, '/api/athletes/ana-1/days')).pain).toBeNull();
});

test('of somebody whom no mound knows there are no days, and the answer says so', async () => {
  const server = await serverForTest();
  const response = await fetch(`${server.address}/api/athletes/nobody/days`);
  expect([response.status, await response.json()]).toMatchObject([404, { code: 'unknown-athlete', path: 'id' }]);
});
