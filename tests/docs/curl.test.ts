import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { folderForTest } from '../server/folder.ts';
import { ATHLETE, opened } from '../server/frames.ts';
import { get, serverForTest } from '../server/running.ts';
import { ScreenClient } from '../server/screen-client.ts';

const linesOn = (page: string): string[] => [...readFileSync(new URL(`../../docs/${page}`, import.meta.url), 'utf8').matchAll(/^ {4}(curl .+)$/gm)].map(([, line]) => line!);
const curled = async (line: string, cwd: string): Promise<string> => (await promisify(execFile)('sh', ['-c', line.replace(/^curl /, 'curl --silent --show-error --fail ')], { cwd })).stdout;

test('the lines for curl on the pages do what the pages say, against a server', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  for (const says of [opened('s-1'), { kind: 'session-closed', session: 's-1' }]) expect(await screen.say(says)).toMatchObject({ kind: 'stored' });
  const folder = folderForTest();
  const filledIn = (line: string, id: string): string => line.replaceAll('http://127.0.0.1:8080', server.address).replaceAll('/ID/', `/${id}/`).replaceAll('THE NAME', ATHLETE.name);

  const exports = linesOn('exports.md');
  expect(exports.length).toBeGreaterThan(2);
  for (const line of exports) await curled(filledIn(line, 's-1'), folder);
  expect(readdirSync(folder).toSorted()).toEqual(['offpace-facts.jsonl', 'offpace-s-1.csv', 'offpace-throws.parquet']);

  const [give, erase, ...more] = linesOn('athlete-data.md');
  expect(more).toEqual([]);
  await curled(filledIn(give!, ATHLETE.id), folder);
  const facts = readFileSync(path.join(folder, `offpace-${ATHLETE.id}.jsonl`), 'utf8').trim().split('\n');
  expect(facts.slice(1).map((line) => (JSON.parse(line) as { said: { kind: string } }).said.kind)).toEqual(['session-opened', 'session-closed']);
  expect(JSON.parse(await curled(filledIn(erase!, ATHLETE.id), folder))).toMatchObject({ kind: 'erased', facts: 2, sessions: 1 });
  expect(await get(server, '/api/athletes')).toEqual([]);
});
