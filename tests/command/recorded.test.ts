import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ledgersIn } from '../../command/recorded.ts';
import { throwsOf } from '../../core/session/ledger.ts';
import { DeviceClient } from '../server/device-client.ts';
import { folderForTest } from '../server/folder.ts';
import { ATHLETE, opened, path as seen, summary } from '../server/frames.ts';
import { serverForTest, type TestServer } from '../server/running.ts';
import { ScreenClient } from '../server/screen-client.ts';
import { typed } from './typed.ts';

/** A session of seven throws over 18 s, one of them corrected, on a server that goes on running. */
async function recorded(): Promise<TestServer> {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.say(opened('s-1', { athlete: { ...ATHLETE, name: '<Ana> & Co' } }));
  await screen.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (let sequence = 1; sequence <= 6; sequence += 1) await client.ask({ kind: 'throw', sequence, time: 3000 * sequence, body: summary(88) });
  await client.ask({ kind: 'correction', sequence: 7, time: 18_500, corrects: { sequence: 6 }, body: summary(81) });
  await client.ask({ kind: 'throw', sequence: 8, time: 21_000, body: seen() });
  return server;
}

/** The bodies of a mound's throws as they stand. */
function thrownOn({ dataFolder }: TestServer, mound: string): unknown[] {
  const ledger = ledgersIn(dataFolder).find((one) => one.mound === mound)!;
  return [null, ...ledger.order].flatMap((session) => throwsOf(ledger, session)).map(({ body }) => body);
}

describe('offpace replay', () => {
  const into = (server: TestServer): string[] => ['--url', `${server.address.replace('http', 'ws')}/device`, '--token-file', server.tokenFile];

  test('throws a session again into another mound of a server that runs, as the throws stand today, in their own rhythm', async () => {
    const server = await recorded();
    const startedMs = performance.now();
    const { code, out, err } = await typed('replay', '--session', 's-1', '--data', server.dataFolder, ...into(server), '--speed', '20', '--json');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({ session: 's-1', mound: 'replayed-1', throws: 7, stored: 7, refused: 0 });
    expect(performance.now() - startedMs).toBeGreaterThan(18_000 / 20);
    expect(thrownOn(server, 'replayed-1')).toEqual(thrownOn(server, 'north-1'));
  });

  test('says what is recorded where the session is not', async () => {
    const server = await recorded();
    expect(await typed('replay', '--session', 's-9', '--data', server.dataFolder, ...into(server))).toEqual({ code: 1, out: '', err: `There is no session s-9 in ${server.dataFolder}; the newest there are s-1.\n` });
    const nowhere = path.join(folderForTest(), 'nowhere');
    expect((await typed('replay', '--session', 's-1', '--data', nowhere, ...into(server))).err).toBe(`There is no log in ${nowhere}; give the data folder of a server with --data.\n`);
  });
});

describe('offpace report', () => {
  test('says in words what a session was, beside a running server, in the language asked for', async () => {
    const { dataFolder: data } = await recorded();
    const english = await typed('report', '--session', 's-1', '--data', data);
    expect(english).toMatchObject({ code: 0, err: '' });
    expect(english.out).toMatch(/^Report · <Ana> & Co · /);
    expect(english.out).toContain('\n  Throws: 7 throws: 7 four-seam\n');
    expect((await typed('report', '--athlete', ATHLETE.id, '--data', data, '--lang', 'es', '--units', 'metric')).out).toContain('Tiros: 7 tiros');
    expect(JSON.parse((await typed('report', '--session', 's-1', '--data', data, '--json')).out)).toMatchObject({ athlete: ATHLETE.id, session: 's-1', sessions: ['s-1'] });
  });

  test('writes one page that holds everything, and takes no name for markup', async () => {
    const { dataFolder: data } = await recorded();
    const file = path.join(folderForTest(), 'report.html');
    expect((await typed('report', '--session', 's-1', '--data', data, '--html', file)).out).toBe(`The report is in ${file}. It names an athlete: keep it as private as the data folder.\n`);
    const page = readFileSync(file, 'utf8');
    expect(page).toContain('<h1>Report · &lt;Ana&gt; &amp; Co · ');
    expect(page).not.toMatch(/<script|<img|<link|https?:|url\(/);
  });

  test('is of one session or one athlete that is there', async () => {
    const { dataFolder: data } = await recorded();
    expect(await typed('report', '--data', data)).toEqual({ code: 2, out: '', err: 'Say whose report: either --session or --athlete with an id.\n' });
    expect(await typed('report', '--athlete', 'nobody', '--data', data)).toEqual({ code: 1, out: '', err: `There is no athlete nobody with a session in ${data}; known there are ana-1.\n` });
  });
});
