import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { expect, onTestFinished } from 'vitest';
import { randomFrom, type Random } from '../../../simulators/random.ts';
import { folderForTest } from '../folder.ts';
import { forkServer, readyServer, type ReadyServer, type RunBy } from '../forked.ts';
import { linesIn, numbersOf, shownOf, type StoredLine } from './file-check.ts';
import { freePort } from '../free-port.ts';
import { NoteTaker } from './note-taker.ts';
import { StreamingDevice, TOKEN } from './streaming-device.ts';
import { WatchingScreen } from './watching.ts';

const MOUND = 'north-1';
const LONGEST_WAIT_MS = 12;

/** What is done to a server in each of its lives. */
export interface Crash {
  /** How this life of the server is run; left out, as always. */
  runBy?(random: Random): RunBy;
  /** Sees to it that the server ends. */
  end(server: ReadyServer, device: StreamingDevice, random: Random): Promise<void>;
}

/** Killed from outside at any moment. */
export const killed: Crash = {
  async end({ child }, device, random) {
    await device.answered(5 + Math.floor(80 * random.uniform()));
    await after(LONGEST_WAIT_MS * random.uniform());
    child.kill('SIGKILL');
  },
};

/** How the evening went. */
export interface Evening {
  readonly acknowledged: number;
  readonly notes: number;
  /** Servers that did not even come to be ready. */
  readonly stillborn: number;
}

/**
 * One device streams, one coach takes notes and one screen watches while the server is ended again and again. After each end
 * every acknowledged throw and note is in the file once and in order; at last the screen shows what the file holds.
 */
export async function throughCrashes(seed: number, times: number, crash: Crash): Promise<Evening> {
  const random = randomFrom(seed, 'crashes');
  const folder = path.join(folderForTest(), 'data');
  mkdirSync(folder);
  const args = ['--port', String(await freePort()), '--data', folder];
  const address = `http://127.0.0.1:${args[1]}`;
  writeFileSync(path.join(folder, 'device-token'), TOKEN);
  const device = new StreamingDevice(address, MOUND);
  const coach = new NoteTaker(address, MOUND);
  const screen = new WatchingScreen(address, MOUND);
  onTestFinished(() => [device, coach, screen].forEach((one) => one.close()));
  let stillborn = 0;
  for (let life = 0; life < times; life += 1) {
    const server = forkServer(args, crash.runBy?.(random));
    const word = await server.firstWord;
    if (word.kind === 'ready') await crash.end({ ...server, ...word }, device, random);
    else stillborn += 1;
    expect((await server.ended).signal).toBe('SIGKILL');
    holds(linesIn(folder), device, coach);
  }
  await readyServer(args);
  await device.finish();
  await coach.finish();
  const lines = linesIn(folder);
  holds(lines, device, coach);
  expect(numbersOf(lines)).toEqual(Array.from({ length: device.sent }, (_, index) => index + 1));
  const view = shownOf(lines);
  const fresh = new WatchingScreen(address, MOUND);
  onTestFinished(() => fresh.close());
  for (const one of [screen, fresh]) {
    await one.until((shown) => shown?.place === lines.length);
    expect(one.view).toEqual(view);
  }
  return { acknowledged: device.acknowledged.size, notes: coach.acknowledged.size, stillborn };
}

/** Everything acknowledged is there once, and what is there is in order. */
function holds(lines: readonly StoredLine[], device: StreamingDevice, coach: NoteTaker): void {
  expect(lines.map(({ place }) => place)).toEqual(lines.map((_, index) => index + 1));
  const numbers = numbersOf(lines);
  expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
  expect([...device.acknowledged].filter((number) => !numbers.includes(number))).toEqual([]);
  const requests = new Map(lines.flatMap(({ request, place }) => (request === null ? [] : [[request, place]])));
  for (const [request, place] of coach.acknowledged) expect([request, requests.get(request)]).toEqual([request, place]);
  const notes = lines.flatMap(({ said }) => (said.kind === 'note-written' ? [said.text] : []));
  expect(new Set(notes).size).toBe(notes.length);
}
