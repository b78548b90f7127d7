import fs, { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import path from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import type { ImportReport } from '../../../core/facts/import-wire.ts';
import type { SessionListing } from '../../../core/facts/wire.ts';
import type { FileLook } from '../../../core/imports/wire.ts';
import type { RunningServer } from '../../../server/serve.ts';
import { ABLE, CHOICES, PENA } from '../../core/imports/choices.ts';
import { coachAt, openServer, Browser } from '../access/open-server.ts';
import { opened } from '../frames.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const TEXT = `date,time,athlete,pitch kind,release speed (mph),notes
2024-05-03,17:05:10,Able,four-seam,88.1,
2024-05-03,17:05:40,Able,changeup,78.4,
2024-05-03,17:06:00,Peña,changeup,170.2,
`;

interface Answered<T> {
  readonly status: number;
  readonly body: T;
}

async function ask<T>(server: RunningServer, method: string, address: string, body?: string | object): Promise<Answered<T>> {
  const sent = body === undefined ? {} : typeof body === 'string' ? { body, headers: { 'content-type': 'application/octet-stream' } } : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
  const response = await fetch(`${server.address}/api${address}`, { method, ...sent });
  const text = await response.text();
  return { status: response.status, body: (text.startsWith('{') || text.startsWith('[') ? JSON.parse(text) : text) as T };
}

const textOf = async (server: RunningServer, address: string): Promise<string> => (await fetch(`${server.address}/api${address}`)).text();

async function begun(server: RunningServer, choices: object = {}): Promise<string> {
  const { body: { layout } } = await ask<FileLook>(server, 'POST', '/imports/look', TEXT);
  const { status, body } = await ask<{ id: string }>(server, 'POST', '/imports', { name: 'May bullpens.csv', layout, choices: { ...CHOICES, athlete: null, day: null, athletes: { Able: ABLE, Peña: PENA }, ...choices } });
  expect(status).toBe(201);
  return body.id;
}

test('a file comes in over HTTP: looked at, checked, its refused rows taken along, the good ones kept, beside a session that is open', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  expect(await screen.socket.emitWithAck('say', { request: 'opening-now', mound: 'north-1', says: opened('now') })).toMatchObject({ kind: 'stored' });
  const id = await begun(server);
  const { body: report } = await ask<ImportReport & { shown: unknown[] }>(server, 'PUT', `/imports/${id}/file`, TEXT);
  expect(report).toMatchObject({ rows: 3, good: 2, refused: 1, sessions: 1, shown: [{ line: 4, code: 'impossible' }] });
  expect((await ask<string>(server, 'GET', `/imports/${id}/refused.csv`)).body).toMatch(/^line,code,column,why\n4,impossible,release speed \(mph\),A speed of 76\.1 m\/s/);
  expect(await ask(server, 'POST', `/imports/${id}/store`, { mode: 'all-or-nothing' })).toMatchObject({ status: 409, body: { code: 'rows-refused' } });
  expect(await ask(server, 'POST', `/imports/${id}/store`, { mode: 'keep-the-good' })).toMatchObject({ status: 200, body: { kind: 'stored', sessions: 1, throws: 2 } });
  const sessions = await get<SessionListing[]>(server, '/api/sessions');
  expect(sessions.map(({ athleteName, closedAtMs, imported, throws }) => [athleteName, closedAtMs === null, imported?.fileName ?? null, throws])).toEqual([['Ana Ibarra', true, null, 0], ['Invented Able', false, 'May bullpens.csv', 2]]);
  const recording = await get<{ facts: { by: string }[] }>(server, `/api/sessions/${sessions[1]!.id}`);
  expect(recording.facts.map(({ by }) => by)).toEqual(['coach:this-machine', 'coach:this-machine', 'coach:this-machine']);
  expect(await get<{ openSessions: unknown[] }[]>(server, '/api/mounds')).toMatchObject([{ openSessions: [{ id: 'now', active: true }] }]);
  expect(await ask(server, 'GET', `/imports/${id}/refused.csv`)).toMatchObject({ status: 404, body: { code: 'unknown-import' } });
});

test('a wrong import is taken back as a whole: no list, table or athlete’s day counts it, the log keeps it and says who, and the file can come again', async () => {
  const server = await serverForTest();
  const bringIn = async (): Promise<void> => {
    const id = await begun(server);
    expect((await ask<ImportReport>(server, 'PUT', `/imports/${id}/file`, TEXT)).body).toMatchObject({ good: 2, refusedBecause: { impossible: 1 } });
    expect(await ask(server, 'POST', `/imports/${id}/store`, { mode: 'keep-the-good' })).toMatchObject({ status: 200 });
  };
  await bringIn();
  const [brought] = await get<{ id: string }[]>(server, '/api/imports');
  expect(brought).toMatchObject({ fileName: 'May bullpens.csv', by: 'coach:this-machine', sessions: 1, throws: 2, athletes: [ABLE.name], mounds: ['north-1'] });
  const known = await begun(server);
  expect((await ask<ImportReport>(server, 'PUT', `/imports/${known}/file`, TEXT)).body).toMatchObject({ good: 0, refusedBecause: { impossible: 1, known: 2 }, earlier: { sessions: 1 } });
  expect(await ask(server, 'POST', `/imports/${brought!.id}/withdraw`, { name: 'another.csv' })).toMatchObject({ status: 409, body: { code: 'other-file-name', path: 'name' } });
  expect(await ask(server, 'POST', `/imports/${brought!.id}/withdraw`, { name: 'May bullpens.csv' })).toEqual({ status: 200, body: { kind: 'withdrawn', sessions: 1, throws: 2 } });
  expect(await ask(server, 'POST', `/imports/${brought!.id}/withdraw`, { name: 'May bullpens.csv' })).toMatchObject({ status: 404, body: { code: 'no-such-import' } });

  expect(await get(server, '/api/imports')).toEqual([]);
  expect(await get(server, '/api/sessions')).toEqual([]);
  expect((await ask<string>(server, 'GET', '/throws?format=csv')).body.trim().split('\n')).toHaveLength(1);
  expect(await get(server, `/api/athletes/${ABLE.id}/records`)).toEqual([]);
  const facts = (await textOf(server, '/facts')).trim().split('\n').map((line) => JSON.parse(line) as { by?: string; said?: { kind: string } });
  expect(facts.map(({ by, said }) => [said?.kind, by]).slice(1)).toEqual([['session-imported', 'coach:this-machine'], ['throw-imported', 'coach:this-machine'], ['throw-imported', 'coach:this-machine'], ['import-withdrawn', 'coach:this-machine']]);
  // All that is kept of the athlete is still given out, and can be erased.
  expect(await get(server, '/api/athletes')).toMatchObject([{ id: ABLE.id }]);
  expect((await textOf(server, `/athletes/${ABLE.id}/facts`)).trim().split('\n')).toHaveLength(5);

  await bringIn();
  expect(await get<SessionListing[]>(server, '/api/sessions')).toMatchObject([{ athleteName: ABLE.name, throws: 2 }]);
  const again = await begun(server);
  expect((await ask<ImportReport>(server, 'PUT', `/imports/${again}/file`, TEXT)).body).toMatchObject({ good: 0, refusedBecause: { known: 2 } });
  expect(await ask(server, 'POST', `/athletes/${ABLE.id}/erase`, { name: ABLE.name })).toMatchObject({ body: { kind: 'erased', throws: 4, sessions: 2 } });
  expect(await get(server, '/api/athletes')).toEqual([]);
});

test('an import that is broken off, or whose athlete is erased meanwhile, leaves nothing in the data folder', async () => {
  const server = await serverForTest();
  const staged = (): string[] => readdirSync(server.dataFolder).filter((name) => name.startsWith('importing-'));
  const stored = await begun(server);
  await ask(server, 'PUT', `/imports/${stored}/file`, TEXT);
  await ask(server, 'POST', `/imports/${stored}/store`, { mode: 'keep-the-good' });
  expect(staged()).toEqual([]);
  const broken = await begun(server);
  await ask(server, 'PUT', `/imports/${broken}/file`, TEXT);
  expect(staged()).toHaveLength(1);
  expect((await ask(server, 'DELETE', `/imports/${broken}`)).status).toBe(204);
  expect(staged()).toEqual([]);
  const waiting = await begun(server);
  await ask(server, 'PUT', `/imports/${waiting}/file`, TEXT);
  expect(await ask(server, 'POST', `/athletes/${ABLE.id}/erase`, { name: ABLE.name })).toMatchObject({ body: { kind: 'erased', sessions: 1, throws: 2 } });
  expect(staged()).toEqual([]);
  expect(await ask(server, 'POST', `/imports/${waiting}/store`, { mode: 'keep-the-good' })).toMatchObject({ status: 404 });
  expect(await get(server, '/api/sessions')).toEqual([]);
});

test('what is missing is said before the file is sent, and a recipe is kept, found by the shape of the file, renamed and removed', async () => {
  const server = await serverForTest();
  const { body: look } = await ask<FileLook & { recipe: unknown }>(server, 'POST', '/imports/look', TEXT);
  expect(look.recipe).toBeNull();
  const { layout } = look;
  const columns = layout.columns.map((column) => (column.field === 'releaseSpeed' ? { ...column, field: null, unit: null } : column));
  const choices = { ...CHOICES, athlete: null };
  const speedless = await ask<{ code: string }>(server, 'POST', '/imports', { name: 'a.csv', choices, layout: { ...layout, columns } });
  expect([speedless.status, speedless.body.code]).toEqual([400, 'no-speed']);
  expect(await ask(server, 'POST', '/imports', { name: 'a.csv', choices: { ...choices, timeZone: 'Nowhere/At-All' }, layout })).toMatchObject({ status: 400, body: { path: 'choices.timeZone' } });
  expect(await ask(server, 'POST', '/imports/look', 'only a head\n')).toMatchObject({ status: 400, body: { code: 'no-rows' } });
  const { body: recipe } = await ask<{ id: string }>(server, 'POST', '/recipes', { name: 'Bullpens of May', layout });
  expect((await ask<{ recipe: object }>(server, 'POST', '/imports/look', TEXT)).body.recipe).toMatchObject({ name: 'Bullpens of May', layout });
  expect(await ask(server, 'PATCH', `/recipes/${recipe.id}`, { name: 'Bullpens' })).toMatchObject({ status: 200, body: { name: 'Bullpens' } });
  expect((await ask<{ name: string }[]>(server, 'GET', '/recipes')).body.map(({ name }) => name)).toEqual(['Bullpens']);
  expect((await ask(server, 'DELETE', `/recipes/${recipe.id}`)).status).toBe(204);
  expect(await ask(server, 'GET', '/recipes')).toMatchObject({ body: [] });
});

test('recipes that cannot be read are said to be so, with where and why, and nothing is kept over them', async () => {
  const server = await serverForTest();
  const { body: { layout } } = await ask<FileLook>(server, 'POST', '/imports/look', TEXT);
  const file = path.join(server.dataFolder, 'import-recipes.json');
  for (const [damaged, why] of [['{"version":1,"recipes":[', 'It is not JSON: '], ['{"version":1,"recipes":[{"id":"a"}]}', 'At recipes.0.name: The field recipes.0.name is missing; it must be text.']] as const) {
    writeFileSync(file, damaged);
    for (const [method, address, body] of [['GET', '/recipes'], ['POST', '/recipes', { name: 'New', layout }], ['PATCH', '/recipes/a', { name: 'New' }], ['DELETE', '/recipes/a']] as const) {
      const { status, body: refusal } = await ask<{ code: string; sentence: string }>(server, method, address, body);
      expect([status, refusal.code]).toEqual([503, 'unreadable-recipes']);
      expect(refusal.sentence).toContain(`The recipes in ${file} cannot be read. ${why}`);
      expect(refusal.sentence).toContain('Mend the file, or move it away');
    }
    expect(readFileSync(file, 'utf8')).toBe(damaged);
    expect((await ask<{ recipe: object | null }>(server, 'POST', '/imports/look', TEXT)).body.recipe).toBeNull();
  }
  rmSync(file);
  expect((await ask(server, 'POST', '/recipes', { name: 'New', layout })).status).toBe(201);
});

test('each request for recipes reads their file once', async () => {
  const server = await serverForTest();
  const { body: { layout } } = await ask<FileLook>(server, 'POST', '/imports/look', TEXT);
  const { body: { id } } = await ask<{ id: string }>(server, 'POST', '/recipes', { name: 'Bullpens', layout });
  const reading = vi.spyOn(fs, 'readFileSync');
  syncBuiltinESMExports();
  onTestFinished(() => {
    reading.mockRestore();
    syncBuiltinESMExports();
  });
  const requests = [['GET', '/recipes'], ['POST', '/recipes', { name: 'Others', layout }], ['PATCH', `/recipes/${id}`, { name: 'Of May' }], ['POST', '/imports/look', TEXT], ['DELETE', `/recipes/${id}`]] as const;
  for (const [method, address, body] of requests) {
    reading.mockClear();
    // oxlint-disable-next-line no-await-in-loop -- one after the other is what is counted
    expect((await ask(server, method, address, body)).status).toBeLessThan(300);
    const times = reading.mock.calls.filter(([file]) => String(file).endsWith('import-recipes.json')).length;
    expect({ method, address, times }).toEqual({ method, address, times: 1 });
  }
});

test('importing is a coach’s alone', async () => {
  const server = await openServer();
  const stranger = new Browser(server);
  expect((await stranger.ask('POST', '/api/imports', {})).status).toBe(401);
  expect((await stranger.ask('GET', '/api/recipes')).status).toBe(401);
  const coach = await coachAt(server);
  expect(await coach.ask('GET', '/api/recipes')).toMatchObject({ status: 200, body: [] });
});
