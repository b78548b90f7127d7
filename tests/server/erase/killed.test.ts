import { cpSync, watch } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { folderForTest } from '../folder.ts';
import { readyServer } from '../forked.ts';
import { serverForTest } from '../running.ts';
import { erase, evening, HERS, wordsIn } from './evening.ts';

/** What the next start finds. */
function after(folder: string): 'all of it' | 'none of it' {
  const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 0, newId: () => 'new', onTrouble(error) { throw error; } });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  const held = opened.log.mounds().flatMap((mound) => [...opened.log.read(mound, 0)]);
  opened.log.close();
  const erased = held.filter(({ said }) => said.kind === 'erased').length;
  const words = wordsIn(folder);
  expect(held).toHaveLength(21);
  if (erased === 0) expect(words).toEqual(HERS);
  else expect({ erased, words }).toEqual({ erased: 10, words: [] });
  return erased === 0 ? 'all of it' : 'none of it';
}

test('a server killed while it erases has erased all of it or nothing', async () => {
  const server = await serverForTest();
  await evening(server, server.token);
  await server.close();
  const ends: string[] = [];
  // At the nth time that the folder changes: before the commit, in the sweep, not at all.
  for (const nth of [1, 4, Infinity]) {
    const folder = path.join(folderForTest(), 'copy');
    cpSync(server.dataFolder, folder, { recursive: true });
    const { child, ended, address } = await readyServer(['--port', '0', '--data', folder]);
    let changes = 0;
    const watcher = watch(folder, () => {
      if ((changes += 1) >= nth) child.kill('SIGKILL');
    });
    await erase({ address }).catch(() => null);
    child.kill('SIGKILL');
    await ended;
    watcher.close();
    ends.push(after(folder));
  }
  expect(ends.at(-1)).toBe('none of it');
}, 60_000);
