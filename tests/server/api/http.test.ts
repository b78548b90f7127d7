import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import path from 'node:path';
import { expect, test } from 'vitest';
import { folderForTest } from '../folder.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const PAGE = '<!doctype html><title>Offpace</title>';

function builtScreens(): string {
  const folder = folderForTest();
  mkdirSync(path.join(folder, 'assets'));
  writeFileSync(path.join(folder, 'index.html'), PAGE);
  writeFileSync(path.join(folder, 'assets', 'main-abc123.js'), 'export {};');
  return folder;
}

test.each(['/', '/wall/north-1', '/bench/north-1', '/glance/north-1', '/plan/north-1', '/playback', '/playback/s-1?throw=12'])('the page is served at %s and always asked for anew', async (address) => {
  const server = await serverForTest({ webFolder: builtScreens() });
  const response = await fetch(`${server.address}${address}`);
  expect([response.status, response.headers.get('cache-control'), await response.text()]).toEqual([200, 'no-cache', PAGE]);
});

test('an address that no screen has shows a person the page that leads on, and tells a program', async () => {
  const server = await serverForTest({ webFolder: builtScreens() });
  const asked = (accept: string, address = '/nowhere/at/all') => fetch(server.address + address, { headers: { accept } });
  const shown = await asked('text/html,application/xhtml+xml,*/*;q=0.8');
  expect([shown.status, await shown.text()]).toEqual([404, PAGE]);
  const told = await asked('*/*');
  expect([told.status, await told.json()]).toMatchObject([404, { code: 'unknown-address' }]);
  const missing = await asked('text/html', '/assets/none.js');
  expect([missing.status, await missing.json()]).toMatchObject([404, { code: 'unknown-address' }]);
});

test('what carries a hash in its name is kept for ever, and a missing one is no page', async () => {
  const server = await serverForTest({ webFolder: builtScreens() });
  const found = await fetch(`${server.address}/assets/main-abc123.js`);
  expect(found.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
  expect(found.headers.get('content-type')).toContain('javascript');
  const missing = await fetch(`${server.address}/assets/main-old.js`);
  expect([missing.status, await missing.json()]).toMatchObject([404, { code: 'unknown-address' }]);
});

test('the build is named by the page that is served', async () => {
  const server = await serverForTest({ webFolder: builtScreens() });
  expect(await get(server, '/api/health')).toMatchObject({ kind: 'healthy', build: createHash('sha256').update(PAGE).digest('hex').slice(0, 16), refusals: {} });
});

test('a server whose screens are not built says so and still takes throws', async () => {
  const server = await serverForTest();
  const response = await fetch(`${server.address}/`);
  expect([response.status, await response.json()]).toEqual([503, { code: 'no-screens', path: '', sentence: 'The screens are not built; run npm run build.' }]);
  const { client } = await DeviceClient.greet(server.address, server.token);
  expect(await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() })).toEqual({ kind: 'stored', sequence: 1 });
});

test('pages may run no inline script, be framed by nobody, and load nothing from elsewhere', async () => {
  const server = await serverForTest({ webFolder: builtScreens() });
  const { headers } = await fetch(server.address);
  const policy = headers.get('content-security-policy')!;
  expect(policy).toContain("default-src 'self'");
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toContain('unsafe');
  expect(headers.get('x-powered-by')).toBeNull();
  expect(headers.get('x-content-type-options')).toBe('nosniff');
});

test.each([
  ['/api/sessions/none', 404, 'unknown-session'],
  ['/api/nothing', 404, 'unknown-address'],
  ['/nothing', 404, 'unknown-address'],
  ['/wall/%E0%A4%A', 400, 'malformed'],
  ['/../../etc/passwd', 404, 'unknown-address'],
  ['/..%2f..%2fetc%2fpasswd', 404, 'unknown-address'],
])('what cannot be served at %s is answered with %i, a code and a sentence', async (address, status, code) => {
  const server = await serverForTest({ webFolder: builtScreens() });
  const answer = await raw(server.port, address);
  expect(answer).toMatchObject({ status, body: { code, sentence: expect.stringMatching(/^[A-Z].*\.$/) } });
  expect(JSON.stringify(answer.body)).not.toContain('server/');
});

test('a request under a foreign name is turned away', async () => {
  const server = await serverForTest({ webFolder: builtScreens() });
  expect(await raw(server.port, '/api/sessions', { host: 'rebound.example' })).toMatchObject({ status: 403, body: { code: 'foreign' } });
});

test('athletes, sessions and mounds are listed from what coaches said', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const coach = new ScreenClient(server);
  await coach.say(opened('s-1'));
  clock.advance(1000);
  await coach.say(opened('s-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }));
  clock.advance(1000);
  await coach.say({ kind: 'session-closed', session: 's-1' });
  await coach.say(opened('s-3', { athlete: { ...ATHLETE, name: 'Ana Ibarra Ruiz' } }));
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  expect(await get(server, '/api/athletes')).toMatchObject([{ id: 'ana-1', name: 'Ana Ibarra Ruiz' }, { id: 'ben-2' }]);
  expect(await get(server, '/api/sessions')).toMatchObject([{ id: 's-3', throws: 1, closedAtMs: null }, { id: 's-2', throws: 0 }, { id: 's-1', closedAtMs: clock.nowMs() }]);
  expect(await get(server, '/api/mounds')).toMatchObject([{
    mound: 'north-1', place: 5, device: { verdict: 'fresh', device: 'eye-1' },
    openSessions: [{ id: 's-2', athleteName: 'Ben Ortiz', active: false }, { id: 's-3', active: true }],
  }]);
});

/** A request whose address and host go out as they are given. */
function raw(port: number, address: string, headers: Record<string, string> = {}): Promise<{ status: number; body: unknown }> {
  return new Promise((resolve, reject) => {
    request({ port, host: '127.0.0.1', path: address, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => resolve({ status: response.statusCode!, body: JSON.parse(Buffer.concat(chunks).toString('utf8')) }));
    }).on('error', reject).end();
  });
}
