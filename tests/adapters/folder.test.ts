import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { folderForTest } from '../server/folder.ts';
import { serverForTest } from '../server/running.ts';
import { adapt, storedIn, thrown } from './adapting.ts';

const drop = (folder: string, name: string, lines: readonly (object | string)[]): void =>
  writeFileSync(path.join(folder, name), lines.map((line) => `${typeof line === 'string' ? line : JSON.stringify(line)}\n`).join(''));

test('files of throws go to the device door line by line, then to done, or to refused with the reason of each line', async () => {
  const [server, folder] = [await serverForTest(), folderForTest()];
  drop(folder, 'a.jsonl', [thrown(1), '', thrown(2)]);
  const adapter = adapt(server, { kind: 'folder', folder });
  await adapter.said(/^adapter: a\.jsonl is stored/);
  drop(folder, 'b.jsonl', [thrown(3), 'half a li', thrown(4, { body: { summary: { releaseSpeed: 400 } } }), thrown(2, { time: 7 }), thrown(5)]);
  await adapter.said(/^adapter: b\.jsonl is refused: line 2: not-json/);
  // Dropped again, it is stored once; what lies there is not written over.
  drop(folder, 'a.jsonl', [thrown(1), thrown(2)]);
  drop(folder, 'c.jsonl', ['']);
  drop(folder, 'notes.txt', ['not for us']);
  await adapter.said(/^adapter: c\.jsonl is refused: The file holds no line/);
  // Files that come together are taken in whatever order the system names them.
  await expect.poll(() => adapter.lines.filter((line) => line.startsWith('adapter: a.jsonl is stored'))).toHaveLength(2);
  expect(await adapter.stop()).toEqual({ stored: 6, refused: 2 });
  expect(readdirSync(folder).toSorted()).toEqual(['done', 'notes.txt', 'refused']);
  expect(readdirSync(path.join(folder, 'done')).toSorted()).toEqual(['a-2.jsonl', 'a.jsonl']);
  expect(readdirSync(path.join(folder, 'refused')).toSorted()).toEqual(['b.jsonl', 'b.jsonl.reason.txt', 'c.jsonl', 'c.jsonl.reason.txt']);
  expect(readFileSync(path.join(folder, 'refused', 'b.jsonl.reason.txt'), 'utf8').split('\n').map((line) => line.split(': ').slice(0, 2).join(': '))).toEqual([
    'line 2: not-json', 'line 3: impossible at body.summary.releaseSpeed', 'line 4: body-differs at sequence', '',
  ]);
  expect(storedIn(server).map((line) => line.split(' ')[2])).toEqual(['1', '2', '3', '5']);
});

test('a file that lies there while the server is away stays until it is back', async () => {
  const [server, folder] = [await serverForTest(), folderForTest()];
  await server.close();
  drop(folder, 'a.jsonl', [thrown(1), thrown(2)]);
  const first = adapt(server, { kind: 'folder', folder });
  await first.said(/no connection/);
  await first.stop();
  expect(readdirSync(folder)).toContain('a.jsonl');
  const again = await serverForTest({ dataFolder: server.dataFolder, port: server.port });
  const second = adapt(server, { kind: 'folder', folder });
  await second.said(/a\.jsonl is stored/);
  expect(storedIn(again)).toHaveLength(2);
});
