import { expect, test } from 'vitest';
import type { SayReply } from '../../../core/facts/wire.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const pain = (session: string) => ({ kind: 'arm-reported', session, from: 'bench', said: 'pain', areas: ['elbow'] });
const answer = (session: string) => ({ kind: 'pain-answered', session, answer: 'professional-looked', words: 'Dr. Invented looked' });

/** Two mounds of one bullpen, each with a coach's screen. */
async function twoMounds() {
  const server = await serverForTest();
  const [north, south] = [new ScreenClient(server), new ScreenClient(server)];
  await Promise.all([north.watch(), south.watch({ mound: 'south-1' })]);
  let requests = 0;
  const sayOnSouth = (says: unknown, request = `south-request-${++requests}`): Promise<SayReply> => south.socket.emitWithAck('say', { request, mound: 'south-1', says });
  return { server, north, south, sayOnSouth };
}

test('pain reported on one mound is known on the next one the athlete throws from, with the throws of the day', async () => {
  const { server, north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  await north.say(pain('s-1'));
  await sayOnSouth(opened('s-2'));
  await south.atPlace(2);
  expect(south.view?.session?.armCare).toMatchObject({ kind: 'pain-reported', report: { areas: ['elbow'] }, moundThrows: 1 });
});

test('pain reported or answered for on one mound reaches a session that is open on another', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await sayOnSouth(opened('s-2'));
  await north.say(pain('s-1'));
  await south.until(() => south.view?.session?.armCare.kind === 'pain-reported');
  expect(await sayOnSouth(answer('s-2'))).toMatchObject({ kind: 'stored' });
  await north.until(() => north.view?.session?.armCare.kind === 'under');
  expect(south.view?.session?.armCare.kind).toBe('under');
});

test('another athlete’s pain is nobody else’s', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await north.say(pain('s-1'));
  await sayOnSouth(opened('s-2', { athlete: { ...ATHLETE, id: 'bo-1', name: 'Bo Invented' } }));
  await south.atPlace(1);
  expect(south.view?.session?.armCare.kind).toBe('under');
});

test('an opening that is said again tells nothing twice', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await north.say(pain('s-1'));
  const first = await sayOnSouth(opened('s-2'), 'the-same-request');
  expect(await sayOnSouth(opened('s-2'), 'the-same-request')).toEqual(first);
  await sayOnSouth({ kind: 'note-written', session: 's-2', text: 'warm', place: null });
  await south.until(() => south.view?.session?.notes.length === 1);
  expect(south.view?.place).toBe(3);
});
