import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { keptPassphrase, keepPassphrase, tooWeak } from '../../../server/access/passphrase.ts';
import { slowAttempts } from '../../../server/access/attempts.ts';
import { folderForTest } from '../folder.ts';
import { opened } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { serverForTest } from '../running.ts';
import { Browser, coachAt, openServer } from './open-server.ts';

const guess = (passphrase: string, name = 'Ines Marrow') => ({ name, passphrase });

test('a coach signs in with name and passphrase, gets a cookie that no script reads, and what is said carries the name', async () => {
  const server = await openServer();
  const browser = new Browser(server);
  const answer = await browser.ask('POST', '/api/sign-in', guess('four quiet words at dusk'));
  expect([answer.status, answer.body]).toEqual([200, { kind: 'coach', name: 'Ines Marrow' }]);
  expect(answer.headers.get('set-cookie')).toMatch(/^offpace-coach=[0-9a-f]{8}\.[0-9a-f]{64}; Max-Age=43200; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/);
  expect(answer.headers.get('cache-control')).toBe('no-store');
  expect(await browser.screen().say(opened('s-1'))).toMatchObject({ kind: 'stored' });
  expect((await browser.ask('GET', '/api/sessions/s-1')).body).toMatchObject({ facts: [{ by: 'coach:Ines Marrow' }] });
});

test('without signing in nobody sees or says anything, and every screen leads to the door', async () => {
  const server = await openServer();
  const browser = new Browser(server);
  expect((await browser.ask('GET', '/bench/north-1?lang=es')).headers.get('location')).toBe('/sign-in?to=%2Fbench%2Fnorth-1%3Flang%3Des');
  expect(await browser.ask('GET', '/api/athletes')).toMatchObject({ status: 401, body: { code: 'not-let-in' } });
  expect((await browser.ask('GET', '/api/health')).body).toEqual({ kind: 'healthy', build: 'none' });
  expect(await browser.ask('POST', '/api/grants', { kind: 'viewer', mound: 'north-1' })).toMatchObject({ status: 401 });
});

test('signing out ends the cookie for good', async () => {
  const server = await openServer();
  const browser = await coachAt(server);
  const { cookie } = browser;
  await browser.ask('POST', '/api/sign-out');
  expect(browser.cookie).toBe('');
  expect((await browser.ask('GET', '/api/me', undefined, { cookie })).body).toEqual({ kind: 'nobody' });
});

test('a sign-in is over after twelve hours, on a screen that is open as well', async () => {
  const clock = handClock();
  const browser = await coachAt(await openServer({ clock }));
  const screen = browser.screen();
  await screen.watch();
  clock.advance(12 * 3600_000);
  await screen.until(() => !screen.socket.connected);
  expect((await browser.ask('GET', '/api/sessions')).status).toBe(401);
});

test('a coach sees who was let in and ends it at once, without a secret in the list', async () => {
  const server = await openServer();
  const [own, lost] = [await coachAt(server), await coachAt(server, 'Tablet left in the van')];
  const screen = lost.screen();
  await screen.watch();
  const { body } = await own.ask('GET', '/api/grants');
  const listed = body as unknown as { id: string; to: { name: string } }[];
  expect(listed).toMatchObject([{ to: { kind: 'coach', name: 'Ines Marrow' } }, { to: { name: 'Tablet left in the van' } }]);
  expect(JSON.stringify(body)).not.toMatch(/hash|[0-9a-f]{64}/);
  await own.ask('DELETE', `/api/grants/${listed[1]!.id}`);
  await screen.until(() => !screen.socket.connected);
  expect((await lost.ask('GET', '/api/me')).body).toEqual({ kind: 'nobody' });
});

test('who was let in still is after a restart', async () => {
  const server = await openServer();
  const browser = await coachAt(server);
  const { cookie } = browser;
  await server.close();
  const again = new Browser(await openServer({ dataFolder: server.dataFolder }));
  expect((await again.ask('GET', '/api/me', undefined, { cookie })).body).toEqual({ kind: 'coach', name: 'Ines Marrow' });
});

test.each([
  ['no body', undefined, 400],
  ['no JSON', '{"name":', 400],
  ['a name that is markup', guess('four quiet words at dusk', '<b>me</b>'), 400],
  ['a field too many', { ...guess('x'), role: 'coach' }, 400],
  ['more than a sign-in needs', guess('x'.repeat(5000)), 413],
  ['a wrong passphrase', guess('four quiet words at dawn'), 401],
])('a sign-in with %s is refused', async (_, body, status) => {
  const browser = new Browser(await openServer());
  expect(await browser.ask('POST', '/api/sign-in', body)).toMatchObject({ status, body: { code: expect.any(String), sentence: expect.stringMatching(/^[A-Z].*\.$/) } });
  expect(browser.cookie).toBe('');
});

test('guesses are slowed: after five the next waits, longer each time, also when they come at once; the right words after the wait are let in', async () => {
  const clock = handClock();
  const server = await openServer({ clock });
  const browser = new Browser(server);
  const statuses = await Promise.all(Array.from({ length: 8 }, () => browser.ask('POST', '/api/sign-in', guess('wrong words, all of them'))));
  expect(statuses.map(({ status }) => status).sort()).toEqual([401, 401, 401, 401, 401, 429, 429, 429]);
  const tooSoon = await browser.ask('POST', '/api/sign-in', guess('four quiet words at dusk'));
  expect([tooSoon.status, tooSoon.headers.get('retry-after')]).toEqual([429, '1']);
  clock.advance(1000);
  expect((await browser.ask('POST', '/api/sign-in', guess('wrong again, of course'))).status).toBe(401);
  expect((await browser.ask('POST', '/api/sign-in', guess('x'))).headers.get('retry-after')).toBe('2');
  clock.advance(2000);
  expect((await browser.ask('POST', '/api/sign-in', guess('four quiet words at dusk'))).status).toBe(200);
});

test('guesses from many addresses are slowed together, but never so long that the coach is kept out', () => {
  const clock = handClock();
  const attempts = slowAttempts(clock.nowMs);
  const begun = Array.from({ length: 1000 }, (_, index) => attempts.begin(`192.168.4.${index}`));
  expect(begun.filter((waitMs) => waitMs === 0)).toHaveLength(30);
  for (let hour = 0; hour < 200; hour += 1) {
    const waitMs = attempts.begin('192.168.9.9');
    expect(waitMs).toBeLessThanOrEqual(10_000);
    clock.advance(waitMs);
    attempts.begin(`192.168.5.${hour}`);
  }
});

test('on this machine alone nobody signs in, and a request that another program passed on is nobody', async () => {
  const server = await serverForTest();
  const browser = new Browser(server);
  expect((await browser.ask('GET', '/api/me')).body).toEqual({ kind: 'coach', name: 'this-machine' });
  expect(await browser.ask('POST', '/api/sign-in', guess('four quiet words at dusk'))).toMatchObject({ status: 409, body: { code: 'no-passphrase' } });
  for (const name of ['x-forwarded-for', 'forwarded', 'via']) {
    expect((await browser.ask('GET', '/api/sessions', undefined, { [name]: '203.0.113.7' })).status).toBe(401);
  }
});

test('the passphrase is kept as a hash of 128 MiB a guess, readable by its owner only, and matches however the accents were typed', async () => {
  const [folder, cheap] = [folderForTest(), folderForTest()];
  await keepPassphrase(folder, 'mañana café árbol niño', 'ab'.repeat(16));
  const file = path.join(folder, 'passphrase.json');
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ cost: 131_072, hash: expect.stringMatching(/^[0-9a-f]{64}$/) });
  await keepPassphrase(cheap, 'mañana café árbol niño', 'ab'.repeat(16), 16);
  const kept = keptPassphrase(cheap)!;
  expect(await kept.matches('mañana café árbol niño'.normalize('NFD'))).toBe(true);
  expect(await kept.matches('manana cafe arbol nino')).toBe(false);
  expect(await kept.matches('mañana café árbol niñ')).toBe(false);
});

test('another passphrase ends every sign-in by the one before; the same one again ends none', async () => {
  const passphraseFile = path.join(folderForTest(), 'passphrase');
  const server = await openServer();
  const { cookie } = await coachAt(server);
  const kindAfterRestart = async (words: string) => {
    writeFileSync(passphraseFile, `${words}\n`);
    const again = await openServer({ dataFolder: server.dataFolder, passphraseFile });
    const { body } = await new Browser(again).ask('GET', '/api/me', undefined, { cookie });
    await again.close();
    return body['kind'];
  };
  await server.close();
  expect(await kindAfterRestart('four quiet words at dusk')).toBe('coach');
  expect(await kindAfterRestart('five other words before noon')).toBe('nobody');
});

test('a passphrase that is short or repeats itself is not taken', () => {
  expect(tooWeak('short words')).toContain('is too short');
  expect(tooWeak('aaaaaaaaaaaaaaaa')).toContain('repeats');
  expect(tooWeak('x'.repeat(129))).toContain('is too long');
  expect(tooWeak('four quiet words')).toBeNull();
});

test('a damaged file of who was let in stops the start with one sentence, and is not overwritten', async () => {
  const dataFolder = folderForTest();
  const file = path.join(dataFolder, 'grants.json');
  writeFileSync(file, '[{"id":');
  await expect(serverForTest({ dataFolder })).rejects.toThrow(`${file} is damaged`);
  expect(readFileSync(file, 'utf8')).toBe('[{"id":');
});
