import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { folderForTest } from '../folder.ts';
import { readyServer, type ForkedServer, type RunBy } from '../forked.ts';
import { wholeEvening } from './whole-evening.ts';

const place = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const watched = (main?: string): RunBy => ({ under: ['env', `NODE_OPTIONS=--import=${place('watch-outbound.mjs')}`], ...(main === undefined ? {} : { main }) });
/** What went out until the end, each way once. */
async function outbound({ child, logged }: ForkedServer): Promise<string[]> {
  if (!child.stdout!.readableEnded) await once(child.stdout!, 'end');
  const ways = logged().filter((line) => line.startsWith('{"outbound"')).map((line) => (JSON.parse(line) as { outbound: string }).outbound);
  return [...new Set(ways)];
}

test('through a whole evening the server begins no connection, sends no packet and looks up no name', async () => {
  const server = await readyServer(['--port', '0', '--data', folderForTest()], watched());
  await wholeEvening(server);
  expect(await outbound(server)).toEqual([]);
  expect(server.logged().join('\n')).toContain('stopped');
});

test('a connection, a packet and a name would be seen', async () => {
  const leaking = await readyServer([], watched(place('leaks.mjs')));
  expect(await outbound(leaking)).toEqual(['connect', 'packet', 'name']);
});
