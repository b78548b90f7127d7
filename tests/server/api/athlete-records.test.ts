import { expect, test } from 'vitest';
import type { SessionSlice } from '../../../core/session/recorded.ts';
import type { SessionRecord } from '../../../core/session/session-record.ts';
import { sessionsIn, throwsOf } from '../../../core/session/ledger.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { moundView } from '../../../core/session/view.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

/** One athlete on two mounds, another on the first; throws on the first mound, one of them unclaimed. */
async function bullpen() {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  let requests = 0;
  const say = async (mound: string, says: unknown): Promise<void> => {
    requests += 1;
    expect(await screen.socket.emitWithAck('say', { request: `request-${requests}`, mound, says })).toMatchObject({ kind: 'stored' });
    clock.advance(1000);
  };
  await say('north-1', opened('n-1'));
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (let sequence = 1; sequence <= 3; sequence += 1) await client.ask({ kind: 'throw', sequence, time: sequence, body: summary() });
  await say('north-1', { kind: 'throws-excluded', session: 'n-1', places: [3], reason: 'slipped' });
  await say('north-1', { kind: 'session-closed', session: 'n-1' });
  await client.ask({ kind: 'throw', sequence: 4, time: 4, body: summary() });
  await say('north-1', opened('n-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }));
  await say('south-2', opened('s-1'));
  return server;
}

test('the records of an athlete hold the sessions of all mounds, newest first, each as Playback shows its end', async () => {
  const server = await bullpen();
  const records = await get<SessionRecord[]>(server, '/api/athletes/ana-1/records');
  expect(records.map(({ session, mound }) => [session, mound])).toEqual([['s-1', 'south-2'], ['n-1', 'north-1']]);
  const { carry, facts } = await get<SessionSlice>(server, '/api/sessions/n-1');
  const played = moundView(facts.reduce(foldFact, carry), 'n-1');
  const { view } = records[1]!;
  expect({ session: view.session, throws: view.throws }).toEqual(JSON.parse(JSON.stringify({ session: played.session, throws: played.throws })));
  expect(view.throws).toHaveLength(3);
  expect(view.unclaimed).toEqual([]);
});

test('the record of one session is the one among those of its athlete', async () => {
  const server = await bullpen();
  const records = await get<SessionRecord[]>(server, '/api/athletes/ana-1/records');
  const own = await get<SessionRecord>(server, '/api/sessions/n-1/record');
  expect(own.view).toEqual(records[1]!.view);
  expect(sessionsIn(own.ledger).map(({ id }) => id)).toEqual(['n-1']);
});

test('of an athlete or a session that nobody knows there is no record', async () => {
  const server = await bullpen();
  expect(await get(server, '/api/athletes/nobody/records')).toMatchObject({ code: 'unknown-athlete' });
  expect(await get(server, '/api/sessions/nothing/record')).toMatchObject({ code: 'unknown-session' });
});

test('throws as they were measured go along only with a session that a comparison holds', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (const session of ['n-1', 'n-2']) {
    await screen.say(opened(session));
    await screen.say({ kind: 'intent-set', session, intent: 'four-seam' });
    for (let count = 1; count <= 5; count += 1) await client.ask({ kind: 'throw', sequence: (session === 'n-1' ? 0 : 5) + count, time: count, body: summary(88 + count / 5) });
    for (const words of ['through', 'over']) await screen.say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: null } });
  }
  const held = async () => (await get<SessionRecord[]>(server, '/api/athletes/ana-1/records')).map(({ session, ledger, view, baselines }) => [session, view.throws.length, throwsOf(ledger, session).length, baselines]);
  expect((await held()).sort()).toEqual([['n-1', 5, 0, { mound: 1 }], ['n-2', 5, 0, { mound: 2 }]]);
  const zone = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.08, armSideRadiusM: 0.08 };
  expect(await screen.say({ kind: 'comparison-opened', session: 'n-2', k: 1, stage: 'mound', zone, a: 'A', b: 'B', baseline: 2 })).toMatchObject({ kind: 'stored' });
  expect((await held()).sort()).toEqual([['n-1', 5, 0, { mound: 1 }], ['n-2', 5, 5, { mound: 2 }]]);
  expect(await screen.say({ kind: 'comparison-continued', session: 'n-2', k: 1, day: { session: 'n-1', a: 'A', b: 'B', baseline: 1 } })).toMatchObject({ kind: 'stored' });
  expect((await held()).map(([, , kept]) => kept)).toEqual([5, 5]);
});
