import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { said } from '../../proved.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { readyServer } from '../forked.ts';
import { summary } from '../frames.ts';
import { acknowledgementsIn, type Acknowledgement } from './flushed.ts';
import { demandStrace, tracedTo } from './under-strace.ts';

const BUILT = fileURLToPath(new URL('../../../dist/node', import.meta.url));
const THROWS = 400;
const AT_ONCE = 8;

beforeAll(demandStrace);

/** Streams throws at a server that strace watches, and reads what it saw. */
async function traced(main?: string): Promise<Acknowledgement[]> {
  const trace = path.join(folderForTest(), 'trace');
  const server = await readyServer(['--port', '0', '--data', folderForTest()], tracedTo(trace, main));
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  for (let sequence = 1; sequence <= THROWS; sequence += 1) {
    client.send({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });
    // oxlint-disable-next-line no-await-in-loop -- a few at once, so that some share a commit and some do not
    if (sequence > AT_ONCE) expect(await client.next()).toMatchObject({ kind: 'stored' });
  }
  for (let left = 0; left < AT_ONCE; left += 1) expect(await client.next()).toMatchObject({ kind: 'stored' });
  server.child.disconnect();
  await server.ended;
  return acknowledgementsIn(readFileSync(trace, 'latin1'));
}

/** The built server with one call left out: its log is not flushed. It lies inside the project so that it finds its libraries. */
function unflushedBuild(): string {
  const folder = fileURLToPath(new URL('../../../test-results/unflushed', import.meta.url));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  cpSync(BUILT, folder, { recursive: true });
  const file = path.join(folder, 'server', 'log', 'writing-thread.mjs');
  const before = readFileSync(file, 'utf8');
  const after = before.replace('fdatasyncSync(beside);', ';');
  expect(after).not.toBe(before);
  writeFileSync(file, after);
  return path.join(folder, 'command', 'main.js');
}

test('between the write of every throw and its acknowledgement lies a completed flush of the log', async () => {
  const acknowledgements = await traced();
  expect(acknowledgements).toHaveLength(THROWS);
  expect(acknowledgements.filter(({ flushed }) => !flushed)).toEqual([]);
  said(`${THROWS} throws: each was written, flushed and then acknowledged, in that order`);
});

test('the same check fails where the log is not flushed', async () => {
  const acknowledgements = await traced(unflushedBuild());
  const unflushed = acknowledgements.filter(({ flushed }) => !flushed).length;
  expect(acknowledgements).toHaveLength(THROWS);
  expect(unflushed).toBeGreaterThan(0.9 * THROWS);
  said(`without the flush the check finds ${unflushed} of ${THROWS} acknowledgements without a flush before them`);
});
