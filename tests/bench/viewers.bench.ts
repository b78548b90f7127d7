import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { io } from 'socket.io-client';
import { expect, onTestFinished, test } from 'vitest';
import { DeviceClient } from '../server/device-client.ts';
import { readyServer } from '../server/forked.ts';
import { ATHLETE, opened, summary } from '../server/frames.ts';
import { report } from './measure.ts';
import { crowdAt, residentKb, type Crowd } from './viewer-crowd.ts';

const MOUNDS = Array.from({ length: 10 }, (_, index) => `mound-${index + 1}`);
const EACH = 50;
const SECONDS = 30;
const WARM_UP_SECONDS = 3;
const MOST_MS = 50;
const MOST_KB = 100;

interface Measured {
  readonly p99Ms: number;
  readonly medianMs: number;
}

/** One throw a second on each mound, the mounds a tenth of a second apart. */
async function thrownFor(crowd: Crowd, throwOn: (mound: string, count: number) => void): Promise<Measured> {
  const tookMs: number[] = [];
  const startedMs = performance.now();
  const pending: Promise<unknown>[] = [];
  for (let turn = 0; turn < (SECONDS + WARM_UP_SECONDS) * MOUNDS.length; turn += 1) {
    // oxlint-disable-next-line no-await-in-loop -- the pace is what is asked for
    await after(Math.max(0, startedMs + turn * 100 - performance.now()));
    const mound = MOUNDS[turn % MOUNDS.length]!;
    const has = crowd.lastHas(mound);
    throwOn(mound, 1 + Math.floor(turn / MOUNDS.length));
    if (turn >= WARM_UP_SECONDS * MOUNDS.length) pending.push(has.then((ms) => tookMs.push(ms)));
  }
  await Promise.all(pending);
  tookMs.sort((a, b) => a - b);
  return { medianMs: tookMs[tookMs.length >> 1]!, p99Ms: tookMs[Math.ceil(0.99 * tookMs.length) - 1]! };
}

const said = ({ medianMs, p99Ms }: Measured): string => `median ${medianMs.toFixed(1)} ms, 99th percentile ${p99Ms.toFixed(1)} ms`;

test(`${EACH * MOUNDS.length} viewers on ${MOUNDS.length} mounds have a throw within ${MOST_MS} ms, each for less than ${MOST_KB} kB of memory`, async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-viewers-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const server = await readyServer(['--port', '0', '--data', folder]);
  const token = readFileSync(server.tokenFile, 'utf8').trim();
  const coach = io(server.address, { transports: ['websocket'] });
  const devices = new Map<string, DeviceClient>();
  for (const [index, mound] of MOUNDS.entries()) {
    // oxlint-disable-next-line no-await-in-loop -- one session after the other
    expect(await coach.emitWithAck('say', { request: `request-${mound}`, mound, says: opened(`s-${mound}`, { athlete: { ...ATHLETE, id: `a-${index}` } }) })).toMatchObject({ kind: 'stored' });
    // oxlint-disable-next-line no-await-in-loop -- one device after the other
    devices.set(mound, (await DeviceClient.greet(server.address, token, { mound, device: `eye-${mound}` })).client);
  }
  coach.close();
  const beforeKb = residentKb(server.child.pid!);
  const crowd = await crowdAt(server.address, MOUNDS, EACH);
  const own = await thrownFor(crowd, (mound, count) => devices.get(mound)!.send({ kind: 'throw', sequence: count, time: 1000 * count, body: summary(80 + count % 5) }));
  const eachKb = (residentKb(server.child.pid!) - beforeKb) / (EACH * MOUNDS.length);
  const view = JSON.parse(crowd.newest().slice(2)) as unknown[];
  crowd.close();
  for (const device of devices.values()) device.socket.terminate();
  server.child.kill('SIGTERM');

  const floor = fork(fileURLToPath(new URL('bare-viewers.mjs', import.meta.url)));
  onTestFinished(() => void floor.kill('SIGKILL'));
  floor.send(view[1] as object);
  const [{ address }] = (await once(floor, 'message')) as [{ address: string }];
  const floorBeforeKb = residentKb(floor.pid!);
  const bareCrowd = await crowdAt(address, MOUNDS, EACH);
  const bareDevice = io(address, { transports: ['websocket'] });
  await once(bareDevice as never, 'connect');
  const bare = await thrownFor(bareCrowd, (mound) => bareDevice.emit('throw', mound));
  const floorEachKb = (residentKb(floor.pid!) - floorBeforeKb) / (EACH * MOUNDS.length);
  bareDevice.close();
  bareCrowd.close();

  report(`from frame to the last of ${EACH} viewers: ${said(own)}; bare socket.io, the same message of ${JSON.stringify(view[1]).length} bytes, nothing stored: ${said(bare)}; ratio ${(own.p99Ms / bare.p99Ms).toFixed(1)}`);
  report(`memory for each viewer: ${eachKb.toFixed(0)} kB, of bare socket.io ${floorEachKb.toFixed(0)} kB`);
  expect(own.p99Ms).toBeLessThan(MOST_MS);
  expect(eachKb).toBeLessThan(MOST_KB);
});
