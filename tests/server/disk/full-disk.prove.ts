import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { said } from '../../proved.ts';
import { linesIn, numbersOf } from '../crash/file-check.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { forkServer, readyServer } from '../forked.ts';
import { path as pathBody } from '../frames.ts';
import { smallDisk } from './small-disk.ts';

const MEGABYTES = 4;
const BALLAST_BYTES = 2 * 1024 * 1024;
const FULL = 'Nothing was stored because the disk of the server is full; make room, then send it again.';
const frame = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: pathBody() });

test('a disk that fills up acknowledges nothing more, the server lives, and goes on as soon as there is room', async () => {
  const { folder } = smallDisk(MEGABYTES);
  const data = path.join(folder, 'data');
  const ballast = path.join(folder, 'ballast');
  writeFileSync(ballast, Buffer.alloc(BALLAST_BYTES));
  const server = await readyServer(['--port', '0', '--data', data]);
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  const acknowledged: number[] = [];
  let sequence = 0;
  let refusals = 0;
  // Each throw is asked for until it is stored: on the full disk ten times in vain, then room is made.
  while (refusals === 0 || acknowledged.length < sequence) {
    if (acknowledged.length === sequence) sequence += 1;
    // oxlint-disable-next-line no-await-in-loop -- a device that waits for each answer
    const answer = await client.ask(frame(sequence));
    if (answer.kind === 'stored') acknowledged.push(answer.sequence);
    else {
      expect(answer).toMatchObject({ kind: 'refused', sequence, code: 'storage-failed', sentence: FULL, final: false });
      refusals += 1;
      if (refusals === 10) rmSync(ballast);
    }
  }
  const whenFull = sequence;
  for (let more = 1; more <= 50; more += 1) {
    sequence += 1;
    // oxlint-disable-next-line no-await-in-loop -- as above
    expect(await client.ask(frame(sequence))).toEqual({ kind: 'stored', sequence });
    acknowledged.push(sequence);
  }
  expect(server.child.exitCode).toBeNull();
  server.child.kill('SIGTERM');
  expect(await server.ended).toMatchObject({ code: 0 });
  expect(numbersOf(linesIn(copied(data)))).toEqual(acknowledged);
  said(`a disk of ${MEGABYTES} MB was full at throw ${whenFull}: refused ${refusals} times with one sentence, stored when there was room, ${acknowledged.length} throws kept, each once`);
});

/** Away from the small disk, where there is no room to look at a copy. */
function copied(data: string): string {
  const to = path.join(folderForTest(), 'data');
  cpSync(data, to, { recursive: true });
  return to;
}

test('a disk that is full from the start is one sentence and exit code 1', async () => {
  const { folder } = smallDisk(1);
  writeFileSync(path.join(folder, 'ballast'), Buffer.alloc(1024 * 1024));
  const server = forkServer(['--port', '0', '--data', folder]);
  const sentence = `The disk that holds ${folder} is full; make room, or give another folder with --data.`;
  expect(await server.firstWord).toEqual({ kind: 'failed', sentence });
  expect(await server.ended).toMatchObject({ code: 1, errors: `${sentence}\n` });
  said('a disk that is full from the start: one sentence, exit code 1');
});

test('a disk that may only be read is one sentence and exit code 1, and its log is as it was', async () => {
  const { folder, remount } = smallDisk(MEGABYTES);
  const server = await readyServer(['--port', '0', '--data', folder]);
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  expect(await client.ask(frame(1))).toMatchObject({ kind: 'stored' });
  server.child.kill('SIGTERM');
  await server.ended;
  remount('ro');
  const second = forkServer(['--port', '0', '--data', folder]);
  const sentence = `This account may not write in ${folder}; change that, or give another folder with --data.`;
  expect(await second.firstWord).toEqual({ kind: 'failed', sentence });
  expect(await second.ended).toMatchObject({ code: 1, errors: `${sentence}\n` });
  remount('rw');
  const third = await readyServer(['--port', '0', '--data', folder]);
  const { welcome } = await DeviceClient.greet(third.address, readFileSync(third.tokenFile, 'utf8').trim());
  expect(welcome).toMatchObject({ settledThrough: 1 });
  said('a disk that may only be read: one sentence, exit code 1, served again once it may be written');
});
