import Database from 'libsql';
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { backUp, restore } from '../../../server/log/backup.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { readyServer } from '../forked.ts';
import { opened, summary } from '../frames.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';
import { writeFormat1 } from './format-1.ts';

const OFFPACE = fileURLToPath(new URL('../../../dist/node/command/main.js', import.meta.url));
const throwOf = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });

function rowsOf(file: string): unknown[] {
  const database = new Database(file);
  const rows = ['facts', 'numbers', 'requests', 'refusals', 'log', 'schema_versions'].map((table) => database.prepare(`SELECT * FROM ${table}`).all());
  database.close();
  return rows;
}

/** A folder in which a server has been, with a session of a few throws. */
async function usedFolder(throws = 5): Promise<string> {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.say(opened());
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (let sequence = 1; sequence <= throws; sequence += 1) await client.ask(throwOf(sequence));
  await server.close();
  return server.dataFolder;
}

test('a backup taken beside a running server by another program holds what was acknowledged, and the server goes on', async () => {
  const data = folderForTest();
  const server = await readyServer(['--port', '0', '--data', data]);
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  for (const sequence of [1, 2, 3]) expect(await client.ask(throwOf(sequence))).toEqual({ kind: 'stored', sequence });
  const to = path.join(data, 'backups', 'first');
  const said = execFileSync(process.execPath, [OFFPACE, 'backup', '--data', data, '--to', to], { encoding: 'utf8' });
  expect(said).toMatch(/^Backed up 3 facts of 1 mound to .*first \(SHA-256 [0-9a-f]{64}\)\. It holds athletes' data/);
  expect(await client.ask(throwOf(4))).toEqual({ kind: 'stored', sequence: 4 });
  expect(() => execFileSync(process.execPath, [OFFPACE, 'restore', '--from', to, '--data', data, '--replace'], { encoding: 'utf8', stdio: 'pipe' })).toThrow(`A server is using ${data}; stop it first, or restore into another folder with --data.`);
  expect(await client.ask(throwOf(5))).toEqual({ kind: 'stored', sequence: 5 });
});

test('a restored folder is equal, row by row, and a server serves it as the first one did', async () => {
  const data = await usedFolder();
  const backup = path.join(folderForTest(), 'kept');
  const { digest, facts } = backUp(data, backup);
  const again = path.join(folderForTest(), 'again');
  expect(restore(backup, again, null)).toMatchObject({ digest, facts });
  expect(rowsOf(path.join(again, 'facts.db'))).toEqual(rowsOf(path.join(data, 'facts.db')));
  for (const name of ['device-token']) expect(readFileSync(path.join(again, name))).toEqual(readFileSync(path.join(data, name)));
  expect(statSync(path.join(again, 'device-token')).mode & 0o777).toBe(0o600);
  const [first, second] = [await serverForTest({ dataFolder: data }), await serverForTest({ dataFolder: again })];
  expect(await get(second, '/api/sessions/s-1')).toEqual(await get(first, '/api/sessions/s-1'));
  const { welcome } = await DeviceClient.greet(second.address, first.token);
  expect(welcome).toMatchObject({ kind: 'welcome', settledThrough: 5 });
});

test('a backup is put over a log only when that is asked for, and what was there is backed up first', async () => {
  const [data, other] = [await usedFolder(3), await usedFolder(6)];
  const backup = path.join(folderForTest(), 'kept');
  backUp(data, backup);
  const before = rowsOf(path.join(other, 'facts.db'));
  expect(() => restore(backup, other, null)).toThrow(`${other} holds a log already; give another folder with --data, or put the backup in its place with --replace: what is there now is backed up first.`);
  expect(rowsOf(path.join(other, 'facts.db'))).toEqual(before);
  const keepAs = path.join(other, 'backups', 'before');
  restore(backup, other, keepAs);
  expect(rowsOf(path.join(other, 'facts.db'))).toEqual(rowsOf(path.join(data, 'facts.db')));
  expect(rowsOf(path.join(keepAs, 'facts.db'))).toEqual(before);
});

test('a backup of an older log is restored as it is, and upgraded by the server', async () => {
  const data = path.join(folderForTest(), 'old');
  mkdirSync(data);
  writeFormat1(path.join(data, 'facts.db'));
  const backup = path.join(folderForTest(), 'kept');
  backUp(data, backup);
  const again = path.join(folderForTest(), 'again');
  restore(backup, again, null);
  const server = await serverForTest({ dataFolder: again });
  expect(await get(server, '/api/health')).toMatchObject({ log: 'an-old-log' });
});

test('a damaged, unfinished or missing backup is refused in one sentence, and nothing is written', async () => {
  const data = await usedFolder();
  const backup = path.join(folderForTest(), 'kept');
  backUp(data, backup);
  const target = path.join(folderForTest(), 'again');
  const spoilt = `${backup}-spoilt`;
  cpSync(backup, spoilt, { recursive: true });
  const database = new Database(path.join(spoilt, 'facts.db'));
  database.exec("DROP TRIGGER facts_never_change; UPDATE facts SET at_ms = at_ms + 1 WHERE place = 2");
  database.close();
  expect(() => restore(spoilt, target, null)).toThrow(`The backup in ${spoilt} is damaged: it does not hold what was written into it; take another one.`);
  expect(() => restore(path.join(backup, 'nowhere'), target, null)).toThrow(/^There is no finished backup in /);
  expect(() => backUp(data, backup)).toThrow(/is already there/);
  expect(() => backUp(path.join(target, 'nowhere'), `${backup}-2`)).toThrow(/^There is no log in /);
  expect(existsSync(target)).toBe(false);
});

test('a backup that was broken off has no name yet, and is made anew', async () => {
  const data = await usedFolder();
  const backup = path.join(folderForTest(), 'kept');
  mkdirSync(`${backup}.unfinished`);
  writeFileSync(path.join(`${backup}.unfinished`, 'facts.db'), 'half');
  expect(backUp(data, backup).facts).toBe(6);
  expect(readdirSync(path.dirname(backup))).toEqual(['kept']);
});
