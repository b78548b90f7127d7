import { readFileSync } from 'node:fs';
import path from 'node:path';
import { networkInterfaces } from 'node:os';
import { expect, test } from 'vitest';
import { deviceTokens } from '../../../server/access/device-tokens.ts';
import { keepGrants } from '../../../server/access/grants.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { hello, summary } from '../frames.ts';
import { Browser, coachAt, openServer } from './open-server.ts';

const throwOf = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });

async function withToken(mound = 'north-1') {
  const server = await openServer();
  const coach = await coachAt(server);
  const { body } = await coach.ask('POST', '/api/grants', { kind: 'device', mound });
  return { server, coach, id: String(body['id']), token: String(body['token']) };
}

test('a device with the token of its mound is let in from anywhere, and only there', async () => {
  const { server, token } = await withToken();
  const { client, welcome } = await DeviceClient.greet(server.address, token);
  expect(welcome.kind).toBe('welcome');
  expect(await client.ask(throwOf(1))).toEqual({ kind: 'stored', sequence: 1 });
  const elsewhere = await DeviceClient.greet(server.address, token, { mound: 'south-2', device: 'eye-2' });
  expect(elsewhere.welcome).toMatchObject({ kind: 'refused', code: 'wrong-token', sentence: expect.stringContaining('belongs to mound north-1') });
  expect(await elsewhere.client.closed).toBe(1008);
});

test('a device with the token of one mound cannot correct a throw of another, whatever it calls itself', async () => {
  const { server, token } = await withToken('south-2');
  const north = await DeviceClient.greet(server.address, server.token, { run: 'run-a' });
  await north.client.ask(throwOf(1));
  await north.client.leave();
  const { client } = await DeviceClient.greet(server.address, token, { mound: 'south-2', run: 'run-b' });
  expect(await client.ask({ kind: 'correction', sequence: 1, time: 2000, corrects: { run: 'run-a', sequence: 1 }, body: summary(60) }))
    .toMatchObject({ kind: 'refused', code: 'nothing-to-correct', path: 'corrects', final: true });
});

test('an ended token lets nobody in and closes the line of who is there', async () => {
  const { server, coach, id, token } = await withToken();
  const { client } = await DeviceClient.greet(server.address, token);
  expect((await coach.ask('DELETE', `/api/grants/${id}`)).status).toBe(204);
  expect(await client.closed).toBe(1008);
  expect((await DeviceClient.greet(server.address, token)).welcome).toMatchObject({ kind: 'refused', code: 'wrong-token' });
  expect(await coach.ask('DELETE', `/api/grants/${id}`)).toMatchObject({ status: 404, body: { code: 'unknown-grant' } });
});

test('a device may only send: its token opens no screen and no list', async () => {
  const { server, token } = await withToken();
  const browser = new Browser(server);
  expect(await browser.ask('POST', '/api/open', { secret: token })).toMatchObject({ status: 410 });
  for (const cookie of [`offpace-coach=${token}`, `offpace-screen=${token}`]) {
    expect(await browser.ask('GET', '/api/sessions', undefined, { cookie })).toMatchObject({ status: 401 });
  }
});

test('the token in the file device-token is for this machine only', () => {
  const folder = folderForTest();
  const grants = keepGrants({ dataFolder: folder, nowMs: () => 0, newId: () => 'aaaaaaaa', newSecret: () => 'secret' });
  const tokens = deviceTokens(folder, grants, () => 'the-secret-of-the-file');
  const asked = { token: readFileSync(path.join(folder, 'device-token'), 'utf8').trim(), mound: 'north-1' };
  expect(tokens.entryFor(asked, { remoteAddress: '::ffff:127.0.0.1', localAddress: '::ffff:127.0.0.1' }).kind).toBe('welcome');
  expect(tokens.entryFor(asked, { remoteAddress: '192.168.4.20', localAddress: '192.168.4.20' }).kind).toBe('welcome');
  expect(tokens.entryFor(asked, { remoteAddress: '192.168.4.31', localAddress: '192.168.4.20' })).toMatchObject({ kind: 'refused', sentence: expect.stringContaining('ask a coach for the token of mound north-1') });
  expect(tokens.entryFor(asked, {}).kind).toBe('refused');
});

test('no token and no passphrase stands in the data folder as it was given', async () => {
  const { server, coach, token } = await withToken();
  const [, secret] = token.split('.');
  const kept = ['grants.json', 'passphrase.json'].map((name) => readFileSync(path.join(server.dataFolder, name), 'utf8')).join();
  expect(kept).toContain('"device"');
  for (const hidden of [secret!, coach.cookie.split('.')[1]!, 'four quiet words']) expect(kept).not.toContain(hidden);
});

test('a device on this machine needs no address of its own', async () => {
  const server = await openServer();
  const own = Object.values(networkInterfaces()).flatMap((all) => all ?? []).find(({ family, internal }) => family === 'IPv4' && !internal)?.address ?? '127.0.0.1';
  const client = await DeviceClient.connect(`http://${own}:${server.port}`);
  expect(await client.ask(hello(server.token))).toMatchObject({ kind: 'welcome' });
});
