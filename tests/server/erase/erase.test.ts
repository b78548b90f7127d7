import Database from 'libsql';
import { cpSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { ErasedAnswer } from '../../../core/facts/wire.ts';
import type { SessionRecord } from '../../../core/session/session-record.ts';
import { backUp } from '../../../server/log/backup.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import type { RunningServer } from '../../../server/serve.ts';
import { opened, summary } from '../frames.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';
import { BEN, erase, evening, HERS, QUENBY, throwOf, wordsIn } from './evening.ts';

/** All that screens show of Ben. A record carries the state of his session as well, in which a throw of his was once another's. */
async function ofBen(server: RunningServer): Promise<unknown[]> {
  const views = (await get<SessionRecord[]>(server, '/api/athletes/ben-2/records')).map(({ view, baselines, place }) => ({ view, baselines, place }));
  expect(views.map(({ view }) => view.throws.length)).toEqual([5]);
  return [views, await get(server, '/api/athletes/ben-2/days'), await get(server, '/api/athletes/ben-2/sessions')];
}

test('who is erased stands in no byte of the data folder, others are as they were, and screens get everything anew', async () => {
  const server = await serverForTest();
  const device = await evening(server, server.token);
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.until(() => screen.view !== null);
  const [logBefore, viewBefore, before] = [screen.log, screen.view, await ofBen(server)];
  expect(wordsIn(server.dataFolder)).toEqual(HERS);

  const response = await erase(server);
  expect(response.status).toBe(200);
  expect(await response.json()).toMatchObject({ kind: 'erased', throws: 1, sessions: 2, mounds: ['north-1', 'south-2'], frames: 1, swept: true, named: [], stillIn: [] } satisfies Partial<ErasedAnswer>);
  expect(wordsIn(server.dataFolder)).toEqual([]);
  expect(await ofBen(server)).toEqual(before);
  await screen.until(() => screen.log !== logBefore);
  expect(screen.messages.at(-1)).toMatchObject({ kind: 'snapshot', reason: 'other-log' });
  expect(screen.view).toEqual(viewBefore);
  expect(await get(server, '/api/athletes')).toEqual([BEN]);

  // A device that missed the answer sends again: nothing comes back with it.
  expect(await device.ask(throwOf(4, 83.717))).toEqual({ kind: 'stored', sequence: 4 });
  expect(await device.ask({ kind: 'correction', sequence: 9, time: 9000, corrects: { sequence: 4 }, body: summary(71.713) })).toMatchObject({ kind: 'refused', code: 'nothing-to-correct', final: true });
  expect((await erase(server)).status).toBe(404);
  expect(await (await erase(server)).json()).toMatchObject({ code: 'unknown-athlete', sentence: expect.stringContaining('erased already') });
  await server.close();

  const again = await serverForTest({ dataFolder: server.dataFolder });
  expect(await ofBen(again)).toEqual(before);
});

test('what is kept of an athlete is given out whole: a line that says what it is, then every fact, and where somebody else had the mound', async () => {
  const server = await serverForTest();
  await evening(server, server.token);
  const response = await fetch(`${server.address}/api/athletes/${QUENBY.id}/facts`);
  expect(response.headers.get('content-disposition')).toBe('attachment; filename="offpace-quenby-7f3a.jsonl"');
  const [readme, ...facts] = (await response.text()).trimEnd().split('\n').map((line) => JSON.parse(line) as { kind?: string; facts?: number; mound: string; by: string; said: { kind: string } });
  expect(readme).toMatchObject({ kind: 'readme', athlete: QUENBY.id, facts: facts.length });
  expect(facts.map(({ mound, said }) => [mound, said.kind])).toEqual([
    ['north-1', 'erased'], ['north-1', 'arm-elsewhere'], ['north-1', 'session-opened'], ['north-1', 'trial-begun'], ['north-1', 'throw-measured'],
    ['north-1', 'note-written'], ['north-1', 'throw-corrected'], ['north-1', 'session-closed'], ['north-1', 'erased'],
    ['south-2', 'session-opened'], ['south-2', 'arm-reported'], ['south-2', 'session-closed'],
  ]);
  expect(JSON.stringify(facts)).not.toMatch(/Ben Ortiz|ben-s|ben-2/);
  expect((await fetch(`${server.address}/api/athletes/nobody/facts`)).status).toBe(404);
});

test('nothing is erased under another name or while a session is open, and backups that still hold the athlete are named', async () => {
  const server = await serverForTest();
  await evening(server, server.token);
  backUp(server.dataFolder, path.join(server.dataFolder, 'backups', 'tuesday'));
  mkdirSync(path.join(server.dataFolder, 'backups', 'empty'));
  cpSync(server.tokenFile, path.join(server.dataFolder, 'backups', 'empty', 'device-token'));
  const screen = new ScreenClient(server);
  expect(await (await erase(server, QUENBY.id, 'Quenby')).json()).toMatchObject({ code: 'other-name', path: 'name' });
  await screen.say(opened('thistle-2', { athlete: QUENBY }));
  expect(await (await erase(server)).json()).toMatchObject({ code: 'session-open', sentence: 'A session of the athlete is open on north-1, so nothing was erased; close it first.' });
  expect(await get(server, '/api/athletes')).toEqual([BEN, QUENBY]);
  await screen.say({ kind: 'session-closed', session: 'thistle-2' });
  await screen.say(opened('ben-3', { athlete: BEN }));
  await screen.say({ kind: 'note-written', session: 'ben-3', text: 'faster than quenby thistlewick', place: null });
  expect(await (await erase(server)).json()).toMatchObject({ kind: 'erased', named: [{ mound: 'north-1' }], stillIn: ['backups/tuesday/facts.db'] });
});

test('a log that was erased from is swept at the next start where the sweep could not be made', async () => {
  const server = await serverForTest();
  await evening(server, server.token);
  await server.close();
  const file = path.join(server.dataFolder, 'facts.db');
  const open = () => {
    const opening = openSqliteLog({ file, nowMs: () => 0, newId: () => 'another-log', onTrouble: () => {} });
    if (opening.kind === 'failed') throw new Error(opening.sentence);
    return opening.log;
  };
  const log = open();
  // Somebody reads the log: what was there before must stay for as long.
  const reading = new Database(file);
  reading.exec('BEGIN');
  reading.prepare('SELECT count(*) FROM facts').get();
  expect(log.erase(QUENBY.id, 'coach:Ines Marrow')).toMatchObject({ kind: 'erased', swept: false });
  expect(wordsIn(server.dataFolder)).not.toEqual([]);
  reading.exec('COMMIT');
  reading.close();
  log.close();
  open().close();
  expect(wordsIn(server.dataFolder)).toEqual([]);
});
