import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import type { ViewMessage } from '../../../core/facts/wire.ts';
import { foldFact } from '../../../core/session/fold.ts';
import type { Ledger } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, path as pathBody, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest, type TestServer } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const frame = (sequence: number, body: unknown = summary()) => ({ kind: 'throw', sequence, time: 1000 * sequence, body });

async function deviceOn(server: TestServer, more: object = {}) {
  return (await DeviceClient.greet(server.address, server.token, more)).client;
}

test('a screen gets a snapshot and then each throw once, numbered, each from the place before', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  expect(await screen.watch()).toEqual({ kind: 'watching' });
  await screen.say(opened());
  const device = await deviceOn(server);
  for (const sequence of [1, 2, 3]) await device.ask(frame(sequence));
  await screen.atPlace(4);
  expect(screen.messages.map((message) => (message.kind === 'snapshot' ? message.reason : message.from))).toEqual(['first', 0, 1, 2, 3]);
  expect(screen.view?.throws.map(({ place, number }) => [place, number])).toEqual([[2, 1], [3, 2], [4, 3]]);
});

test('the changes that a screen applies add up to the view that playback makes of the same facts', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  const device = await deviceOn(server);
  await device.ask(frame(1));
  await screen.say(opened());
  await screen.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  for (const sequence of [2, 3, 4, 5, 6]) await device.ask(frame(sequence, summary(92 + sequence / 10, { verticalBreak: 16, horizontalBreak: 7 })));
  await screen.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip: null, cue: { words: 'turn it over', focus: 'external' } });
  await screen.say({ kind: 'zone-set', session: 's-1', zone: { kind: 'ellipse', verticalM: -0.3, armSideM: 0.1, verticalRadiusM: 0.1, armSideRadiusM: 0.1 }, speedBand: null, reason: null });
  for (const sequence of [7, 8, 9]) await device.ask(frame(sequence, pathBody()));
  await device.ask({ kind: 'correction', sequence: 10, time: 99_000, corrects: { sequence: 8 }, body: summary(83) });
  await screen.say({ kind: 'throws-moved', places: [1], session: 's-1' });
  await screen.say({ kind: 'throws-excluded', session: 's-1', places: [12], reason: 'misread' });
  await screen.atPlace(16);
  const { carry, facts } = await get<{ carry: Ledger; facts: Fact[] }>(server, '/api/sessions/s-1');
  expect(facts.at(-1)?.place).toBe(16);
  const played = moundView(facts.reduce(foldFact, carry), 's-1');
  expect(screen.view).toEqual(JSON.parse(JSON.stringify(played)));
  expect(screen.view?.session?.counts.all).toBe(9);
});

test('a screen that comes back by place gets only what it missed, and nothing twice', async () => {
  const server = await serverForTest();
  const device = await deviceOn(server);
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.say(opened());
  await device.ask(frame(1));
  await screen.atPlace(2);
  screen.socket.disconnect();
  for (const sequence of [2, 3]) await device.ask(frame(sequence));
  screen.socket.connect();
  await screen.watch({ place: 2, log: screen.log });
  await screen.atPlace(4);
  const back = screen.messages.at(-1) as Extract<ViewMessage, { kind: 'change' }>;
  expect(back).toMatchObject({ kind: 'change', from: 2, skipped: 0 });
  expect(back.throws.map(({ place }) => place)).toEqual([3, 4]);
});

test('a screen that missed nothing is told so by an empty change', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.say(opened());
  await screen.atPlace(1);
  screen.socket.disconnect().connect();
  await screen.watch({ place: 1, log: screen.log });
  await screen.until(() => screen.messages.length === 3);
  expect(screen.messages[2]).toMatchObject({ kind: 'change', from: 1, throws: [], gone: [] });
});

test('a screen that was away too long, or knew another log, gets everything and the reason', async () => {
  const server = await serverForTest();
  const device = await deviceOn(server);
  const screen = new ScreenClient(server);
  await screen.watch();
  const other = new ScreenClient(server);
  await other.watch();
  for (let sequence = 1; sequence <= 65; sequence += 1) {
    await device.ask(frame(sequence));
    await other.atPlace(sequence); // throws that come together are shown together: here every one is to be a view of its own
  }
  screen.socket.disconnect().connect();
  await screen.watch({ place: 1, log: screen.log });
  await screen.watch({ place: 64, log: 'log-of-another-server' });
  await screen.until(() => screen.messages.slice(-2).every(({ kind }) => kind === 'snapshot'));
  expect(screen.messages.slice(-2)).toMatchObject([{ reason: 'too-far-behind' }, { reason: 'other-log' }]);
});

test('a server that was started again takes up where the screen stands', async () => {
  const first = await serverForTest();
  const screen = new ScreenClient(first);
  await screen.watch();
  await screen.say(opened());
  await screen.atPlace(1);
  await first.close();
  const second = await serverForTest({ dataFolder: first.dataFolder });
  const again = new ScreenClient(second);
  again.view = screen.view;
  await again.watch({ place: 1, log: screen.log });
  await again.until(() => again.messages.length === 1);
  expect(again.messages[0]).toMatchObject({ kind: 'change', from: 1, throws: [] });
});

test('a screen that changes to another session is never given a change to what it painted before', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.say(opened('s-1'));
  await screen.say(opened('s-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }));
  await screen.atPlace(2);
  await screen.watch({ session: 's-1', place: 2, log: screen.log });
  await screen.until(() => screen.messages.at(-1)?.kind === 'snapshot');
  expect(screen.view?.session?.id).toBe('s-1');
});

test('two coaches at two tablets see what the other says at once', async () => {
  const server = await serverForTest();
  const [one, two] = [new ScreenClient(server), new ScreenClient(server)];
  await Promise.all([one.watch(), two.watch()]);
  await one.say(opened());
  await two.atPlace(1);
  await two.say({ kind: 'intent-set', session: 's-1', intent: 'changeup' });
  await one.atPlace(2);
  expect([one.view?.session?.intent, two.view?.session?.intent]).toEqual(['changeup', 'changeup']);
  expect(one.view).toEqual(two.view);
});

test('of two coaches who close a session in the same moment one is told that it is closed', async () => {
  const server = await serverForTest();
  const [one, two] = [new ScreenClient(server), new ScreenClient(server)];
  await one.say(opened());
  const close = { kind: 'session-closed', session: 's-1' };
  const replies = await Promise.all([one.say(close), two.say(close)]);
  expect(replies.map(({ kind }) => kind).sort()).toEqual(['refused', 'stored']);
  expect(replies.find(({ kind }) => kind === 'refused')).toMatchObject({ code: 'session-closed', path: 'says.session' });
});

test('a statement said again under its request is stored once, even when it would no longer be allowed', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  expect(await screen.say(opened(), 'request-same')).toEqual({ kind: 'stored', place: 1 });
  expect(await screen.say(opened(), 'request-same')).toEqual({ kind: 'stored', place: 1 });
  expect(await screen.say(opened(), 'request-other')).toMatchObject({ kind: 'refused', code: 'session-known', path: 'says.session' });
  expect(await screen.say(opened('s-2'), 'request-same')).toMatchObject({ kind: 'refused', code: 'request-differs', path: 'request' });
  await screen.atPlace(1);
});

test('a session id names one session on all mounds', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.say(opened());
  const reply = await screen.socket.emitWithAck('say', { request: 'request-south', mound: 'south-2', says: opened() });
  expect(reply).toMatchObject({ kind: 'refused', code: 'session-known', sentence: expect.stringContaining('north-1') });
});

test('what a screen says wrongly is answered with the place and a sentence, and nothing is stored', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  expect(await screen.say({ kind: 'intent-set', session: 's-1', intent: 'changeup' })).toEqual({ kind: 'refused', code: 'unknown-session', path: 'says.session', sentence: 'This mound has no session s-1.' });
  expect(await screen.say({ kind: 'intent-set', session: 's-1', intent: 'spitball' })).toMatchObject({ kind: 'refused', code: 'malformed', path: 'says.intent' });
  expect(await screen.say(null)).toMatchObject({ kind: 'refused', code: 'malformed', path: 'says' });
  expect(await screen.watch({ mound: 'north 1' })).toMatchObject({ kind: 'refused', code: 'malformed', path: 'mound' });
  screen.socket.emit('say', 'no answer wanted');
  expect(await screen.say(opened())).toEqual({ kind: 'stored', place: 1 });
});

test('a pulse comes every two seconds and at once when the device changes its state', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.until(() => screen.pulses.length === 1);
  expect(screen.pulses[0]).toEqual({ mound: 'north-1', serverAtMs: clock.nowMs(), place: 0, device: { verdict: 'unknown' }, build: 'none' });
  const device = await deviceOn(server);
  await screen.until(() => screen.pulses.length === 2);
  expect(screen.pulses[1]?.device).toEqual({ verdict: 'fresh', device: 'eye-1', sinceMs: clock.nowMs() });
  await device.ask(frame(1));
  clock.advance(2000);
  await screen.until(() => screen.pulses.length === 3);
  expect(screen.pulses[2]).toMatchObject({ place: 1, serverAtMs: clock.nowMs() });
  const heardMs = clock.nowMs() - 2000;
  clock.advance(3000);
  await screen.until(() => screen.pulses.at(-1)?.device.verdict === 'stale');
  expect(screen.pulses.at(-1)?.device).toEqual({ verdict: 'stale', device: 'eye-1', sinceMs: heardMs });
});

test('the pulse of one mound does not go to screens of another', async () => {
  const server = await serverForTest();
  const [north, south] = [new ScreenClient(server), new ScreenClient(server)];
  await Promise.all([north.watch(), south.watch({ mound: 'south-2' })]);
  await deviceOn(server);
  await north.until(() => north.pulses.some(({ device }) => device.verdict === 'fresh'));
  await south.watch({ mound: 'south-2' });
  expect(south.pulses.every(({ mound, device }) => mound === 'south-2' && device.verdict === 'unknown')).toBe(true);
});

test('a slow screen is left alone, then given the newest view with the count of what it skipped', async () => {
  const server = await serverForTest();
  const poll = await pollingScreen(server);
  await poll.send('42["watch",{"mound":"north-1","session":null,"place":null,"log":null}]');
  const first = await poll.fetch();
  expect(views(first)).toMatchObject([{ kind: 'snapshot', reason: 'first' }]);
  const device = await deviceOn(server);
  // Nobody polls now, so what is sent piles up at the server until the screen counts as slow.
  for (let sequence = 1; sequence <= 30; sequence += 1) await device.ask(frame(sequence));
  const piled = views(await poll.fetch());
  expect(piled.length).toBeLessThanOrEqual(8);
  const newest = views(await poll.fetch());
  expect(newest).toHaveLength(1);
  const { place } = piled.at(-1)!.head;
  expect(newest[0]).toMatchObject({ kind: 'change', from: place, skipped: 30 - place - 1, head: { place: 30 } });
  expect(newest[0]!.unclaimed).toHaveLength(30);
});

test('pages of other sites can neither watch nor speak', async () => {
  const server = await serverForTest();
  const response = await fetch(`${server.address}/socket.io/?EIO=4&transport=polling`, { headers: { origin: 'http://elsewhere.example' } });
  expect(response.status).toBe(403);
});

/** Speaks the long-polling transport by hand, so that the test decides when the screen takes something up. */
async function pollingScreen(server: TestServer) {
  const base = `${server.address}/socket.io/?EIO=4&transport=polling`;
  const { sid } = JSON.parse((await (await fetch(base)).text()).slice(1)) as { sid: string };
  const send = async (body: string) => {
    expect((await fetch(`${base}&sid=${sid}`, { method: 'POST', body, headers: { 'content-type': 'text/plain' } })).status).toBe(200);
  };
  const poll = async () => (await (await fetch(`${base}&sid=${sid}`)).text()).split('\u001e');
  await send('40');
  expect((await poll())[0]).toMatch(/^40/);
  return { send, fetch: poll };
}

function views(packets: string[]): Extract<ViewMessage, { kind: 'change' }>[] {
  return packets.filter((packet) => packet.startsWith('42["view"')).map((packet) => (JSON.parse(packet.slice(2)) as [string, Extract<ViewMessage, { kind: 'change' }>])[1]);
}
