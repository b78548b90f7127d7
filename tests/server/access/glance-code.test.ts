import { once } from 'node:events';
import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { Browser, coachAt, openServer, phoneOf } from './open-server.ts';

const session = 's-1';
const comfort = (more: object = {}) => ({ kind: 'comfort-said', session, from: 'glance', comfortable: true, ...more });
const GLANCE = { session };

/** Two athletes on one mound, who alternate; a coach; and the phone of the first. */
async function twoAthletes() {
  const clock = handClock();
  const server = await openServer({ clock });
  const browser = await coachAt(server);
  const bench = browser.screen();
  await bench.watch();
  await bench.say(opened('s-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }));
  await bench.say(opened(session));
  const phone = await phoneOf(server, browser, session);
  return { clock, server, browser, bench, phone };
}

test('a code lets one phone in, to the Glance of its session, and no second one', async () => {
  const { server, browser } = await twoAthletes();
  const { status, body } = await browser.ask('POST', `/api/sessions/${session}/glance-code`);
  expect([status, body['reach']]).toEqual([201, 'network']);
  expect(body['url']).toMatch(/^http:\/\/[^/]+:\d+\/open#[0-9a-f]{8}\.[\w-]{22}$/);
  expect((await browser.ask('GET', `/api/glance-codes/${body['id']}`)).body).toEqual({ state: 'open' });
  const phone = new Browser(server);
  const let_in = await phone.ask('POST', '/api/open', { secret: body['code'] });
  expect([let_in.status, let_in.body]).toEqual([200, { to: '/glance/north-1?session=s-1' }]);
  expect(let_in.headers.get('set-cookie')).toMatch(/^offpace-screen=[^;]+; Max-Age=86400; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/);
  expect((await phone.ask('GET', '/api/me')).body).toEqual({ kind: 'glance', mound: 'north-1', session });
  expect((await browser.ask('GET', `/api/glance-codes/${body['id']}`)).body).toEqual({ state: 'used' });
  const second = new Browser(server);
  expect(await second.ask('POST', '/api/open', { secret: body['code'] })).toMatchObject({ status: 410, body: { code: 'link-over' } });
  expect(second.cookie).toBe('');
});

test('a code is over after five minutes, and as soon as there is a newer one', async () => {
  const { clock, server, browser } = await twoAthletes();
  const ask = async () => (await browser.ask('POST', `/api/sessions/${session}/glance-code`)).body;
  const [first, second] = [await ask(), await ask()];
  expect(second['expiresAtMs']).toBe(clock.nowMs() + 300_000);
  expect(await new Browser(server).ask('POST', '/api/open', { secret: first['code'] })).toMatchObject({ status: 410 });
  clock.advance(300_000);
  expect(await new Browser(server).ask('POST', '/api/open', { secret: second['code'] })).toMatchObject({ status: 410 });
  expect((await browser.ask('GET', `/api/glance-codes/${second['id']}`)).body).toEqual({ state: 'over' });
});

test('no code is given for a session that is closed or unknown', async () => {
  const { browser, bench } = await twoAthletes();
  await bench.say({ kind: 'session-closed', session });
  expect(await browser.ask('POST', `/api/sessions/${session}/glance-code`)).toMatchObject({ status: 409, body: { code: 'session-closed' } });
  expect(await browser.ask('POST', '/api/sessions/constructor/glance-code')).toMatchObject({ status: 404, body: { code: 'unknown-session' } });
});

test('Glance shows its own athlete and nothing of another, nor the notes of the coach', async () => {
  const { server, bench, phone } = await twoAthletes();
  const glance = phone.screen({ speaker: 'athlete' });
  expect(await glance.watch(GLANCE)).toEqual({ kind: 'watching' });
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  await bench.say({ kind: 'throws-moved', places: [3], session: null });
  await bench.say({ kind: 'note-written', session, text: 'Grips it deeper than Ben does.', place: null });
  await glance.atPlace(5);
  expect(glance.view).toMatchObject({ session: { id: session, athlete: { name: ATHLETE.name }, notes: [] }, openSessions: [{ id: session }], unclaimedCount: 1, unclaimed: [] });
  expect(JSON.stringify(glance.messages)).not.toContain('Ben');
});

test.each([
  ['whoever has the mound', { session: null }],
  ['another session of the mound', { session: 's-2' }],
  ['another mound', { mound: 'south-2', session: 's-1' }],
])('Glance may not follow %s', async (_, place) => {
  const { phone } = await twoAthletes();
  expect(await phone.screen({ speaker: 'coach' }).watch(place)).toMatchObject({ kind: 'refused', code: 'not-theirs-to-see' });
});

test.each(['/api/athletes', '/api/athletes/ana-1/records', '/api/athletes/ana-1/days', '/api/mounds', '/api/sessions', '/api/sessions/s-1', '/api/sessions/s-2/record', '/api/grants', '/api/anything-to-come'])('Glance may not ask for %s', async (address) => {
  const { server, phone } = await twoAthletes();
  expect(await phone.ask('GET', address)).toMatchObject({ status: 403, body: { code: 'not-theirs-to-see' } });
  expect(await new Browser(server).ask('GET', address)).toMatchObject({ status: 401, body: { code: 'not-let-in' } });
});

test('from Glance come comfort, soreness, pain and what a throw was, of its own session only, whatever the screen says it is', async () => {
  const { server, browser, phone } = await twoAthletes();
  const glance = phone.screen({ speaker: 'coach' });
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  expect(await glance.say(comfort())).toEqual({ kind: 'stored', place: 4 });
  expect(await glance.say({ kind: 'throw-guessed', session, place: 3, went: { height: 'down', side: 'arm-side' }, moved: null })).toEqual({ kind: 'stored', place: 5 });
  expect(await glance.say({ kind: 'arm-reported', session, from: 'glance', said: 'sore', areas: [] })).toEqual({ kind: 'stored', place: 6 });
  expect(await glance.say(comfort({ session: 's-2' }))).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.session' });
  expect(await glance.say(comfort({ from: 'bench' }))).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.from' });
  for (const says of [{ kind: 'session-closed', session }, { kind: 'note-written', session, text: 'fine', place: null }, { kind: 'pain-answered', session, answer: 'reported-by-mistake', words: 'wrong button' }]) {
    expect(await glance.say(says)).toMatchObject({ kind: 'refused', code: 'not-theirs-to-say', path: 'says.kind' });
  }
  const { facts } = (await browser.ask('GET', `/api/sessions/${session}`)).body as unknown as { facts: Fact[] };
  expect(facts.map(({ by }) => by)).toEqual(['coach:Ines Marrow', 'device:eye-1', 'athlete', 'athlete', 'athlete']);
});

test('when the session closes the phone gets the last view and the end of its line, and is nobody from then on', async () => {
  const { bench, phone } = await twoAthletes();
  const glance = phone.screen({ speaker: 'athlete' });
  await glance.watch(GLANCE);
  const ended = once(glance.socket as unknown as NodeJS.EventEmitter, 'ended');
  const gone = once(glance.socket as unknown as NodeJS.EventEmitter, 'disconnect');
  await bench.say({ kind: 'session-closed', session });
  expect(await ended).toMatchObject([{ kind: 'refused', code: 'not-let-in' }]);
  expect((await gone)[0]).toBe('io server disconnect');
  expect(glance.view?.session?.closedAtMs).not.toBeNull();
  expect((await phone.ask('GET', '/api/me')).body).toEqual({ kind: 'nobody' });
  const again = phone.screen({ speaker: 'athlete' });
  expect(await once(again.socket as unknown as NodeJS.EventEmitter, 'connect_error')).toMatchObject([{ data: { code: 'not-let-in' } }]);
});

test('a phone of a session that nobody closes is let go after a day', async () => {
  const { clock, phone } = await twoAthletes();
  const glance = phone.screen({ speaker: 'athlete' });
  await glance.watch(GLANCE);
  const gone = once(glance.socket as unknown as NodeJS.EventEmitter, 'disconnect');
  clock.advance(24 * 3600_000);
  expect((await gone)[0]).toBe('io server disconnect');
});
