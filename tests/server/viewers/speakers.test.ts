import { once } from 'node:events';
import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const session = 's-1';
const reported = (said: string, more: object = {}) => ({ kind: 'arm-reported', session, from: 'glance', said, areas: [], ...more });
const zone = { kind: 'ellipse', verticalM: -0.3, armSideM: 0.1, verticalRadiusM: 0.1, armSideRadiusM: 0.1 };

/** A session with one throw at place 2, a coach on Bench and an athlete on Glance. */
async function benchAndGlance() {
  const server = await serverForTest();
  const coach = new ScreenClient(server);
  const athlete = new ScreenClient(server, { speaker: 'athlete' });
  await Promise.all([coach.watch(), athlete.watch()]);
  await coach.say(opened(session));
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  await coach.atPlace(2);
  return { server, coach, athlete };
}

test('an athlete on Glance says how the arm and the grip feel and what the throw was, and Bench sees it', async () => {
  const { server, coach, athlete } = await benchAndGlance();
  expect(await athlete.say({ kind: 'comfort-said', session, from: 'glance', comfortable: true })).toEqual({ kind: 'stored', place: 3 });
  expect(await athlete.say({ kind: 'throw-guessed', session, place: 2, went: { height: 'down', side: 'arm-side' }, moved: null })).toEqual({ kind: 'stored', place: 4 });
  expect(await athlete.say(reported('sore'))).toEqual({ kind: 'stored', place: 5 });
  expect(await athlete.say(reported('pain', { areas: ['elbow'] }))).toEqual({ kind: 'stored', place: 6 });
  await coach.atPlace(6);
  expect(coach.view?.session?.armCare).toMatchObject({ kind: 'pain-reported', report: { said: 'pain', areas: ['elbow'], from: 'glance' } });
  expect(coach.view?.session?.comfort?.comfortable).toBe(true);
  const { facts } = await get<{ facts: Fact[] }>(server, '/api/sessions/s-1');
  expect(facts.map(({ by }) => by)).toEqual(['coach:this-machine', 'device:eye-1', 'athlete', 'athlete', 'athlete', 'athlete']);
});

test.each([
  ['answer the pain that was reported', { kind: 'pain-answered', session, answer: 'reported-by-mistake', words: 'wrong button' }],
  ['choose the feedback', { kind: 'feedback-set', session, mode: { kind: 'every-throw' }, askFirst: false }],
  ['move the target', { kind: 'zone-set', session, zone, speedBand: null, reason: null }],
  ['leave a throw out', { kind: 'throws-excluded', session, places: [2], reason: 'misread' }],
  ['claim a throw', { kind: 'throws-moved', places: [2], session: null }],
  ['begin a trial', { kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: null }],
  ['write a note', { kind: 'note-written', session, text: 'fine', place: null }],
  ['bookmark a throw', { kind: 'throw-bookmarked', session, place: 2, on: true }],
  ['close the session', { kind: 'session-closed', session }],
  ['open a session', opened('s-2')],
])('an athlete on Glance may not %s', async (_, says) => {
  const { coach, athlete } = await benchAndGlance();
  await athlete.say(reported('pain'));
  expect(await athlete.say(says)).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.kind' });
  await coach.say({ kind: 'note-written', session, text: 'the next fact', place: null });
  await coach.atPlace(4);
  expect(coach.view?.session?.armCare.kind).toBe('pain-reported');
});

test('nobody says something from a screen that is not theirs', async () => {
  const { coach, athlete } = await benchAndGlance();
  expect(await athlete.say(reported('nothing', { from: 'bench' }))).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.from' });
  expect(await coach.say(reported('nothing'))).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.from' });
  expect(await coach.say(reported('nothing', { from: 'bench' }))).toEqual({ kind: 'stored', place: 3 });
});

test('a screen that says it is somebody else is not let in', async () => {
  const server = await serverForTest();
  const { socket } = new ScreenClient(server, { speaker: 'umpire' });
  const [reason] = await once(socket as unknown as NodeJS.EventEmitter, 'disconnect');
  expect(reason).toBe('io server disconnect');
});
