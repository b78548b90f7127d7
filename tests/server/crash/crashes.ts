import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { expect, onTestFinished } from 'vitest';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';
import { FACT_VERSION } from '../../../core/facts/fact.ts';
import { DeviceClient } from '../../../simulators/client.ts';
import { randomFrom, type Random } from '../../../simulators/random.ts';
import { folderForTest } from '../folder.ts';
import { forkServer, readyServer, type ReadyServer, type RunBy } from '../forked.ts';
import { hello, opened, path as pathBody, summary } from '../frames.ts';
import { linesIn, numbersOf, type StoredLine } from './file-check.ts';
import { freePort } from './free-port.ts';
import { hurriedClock } from './hurried.ts';
import { WatchingScreen } from './watching.ts';

const MOUND = 'north-1';
const TOKEN = 'the token of these tests';
const IN_FLIGHT = 24;
const NOTES_IN_FLIGHT = 2;
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
  const device = new StreamingDevice(address);
  const coach = new NoteTaker(address);
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

/** What playback makes of the lines. */
function shownOf(lines: readonly StoredLine[]): unknown {
  const ledger = lines.reduce((before, { mound, place, atMs, by, said }) => foldFact(before, { mound, place, atMs, by, said, version: FACT_VERSION }), emptyLedger(MOUND));
  return JSON.parse(JSON.stringify(moundView(ledger, null)));
}

/** Throws as fast as it is answered, and keeps what is not. */
class StreamingDevice {
  readonly acknowledged = new Set<number>();
  sent = 0;
  // What a welcome settles is never answered one by one, so it is looked at how much is still kept.
  readonly #hand = setInterval(() => this.#throwOn(), 2);
  #looking: { readonly at: number; readonly resolve: () => void }[] = [];
  readonly #client: DeviceClient;

  constructor(address: string) {
    this.#client = new DeviceClient({
      url: `${address.replace(/^http/, 'ws')}/device`,
      hello: hello(TOKEN, { mound: MOUND }),
      clock: hurriedClock,
      random: randomFrom(1, 'backoff'),
      print: () => {},
      onSettled: (sequence, how) => this.#settled(sequence, how),
    });
  }

  /** Resolves when so many more are acknowledged. */
  answered(more: number): Promise<void> {
    return new Promise((resolve) => this.#looking.push({ at: this.acknowledged.size + more, resolve }));
  }

  async finish(): Promise<void> {
    clearInterval(this.#hand);
    await this.#client.settled();
    expect(this.#client.givenUp).toBeNull();
  }

  close(): void {
    clearInterval(this.#hand);
    this.#client.close();
  }

  #throwOn(): void {
    while (this.#client.unsettledCount < IN_FLIGHT) {
      const sequence = (this.sent += 1);
      this.#client.record({ kind: 'throw', sequence, time: 1000 * sequence, body: sequence % 5 === 0 ? pathBody() : summary(70 + (sequence % 25)) });
    }
  }

  #settled(sequence: number, how: 'stored' | 'refused'): void {
    expect([sequence, how]).toEqual([sequence, 'stored']);
    this.acknowledged.add(sequence);
    const met = this.#looking.filter(({ at }) => at <= this.acknowledged.size);
    this.#looking = this.#looking.filter((one) => !met.includes(one));
    for (const { resolve } of met) resolve();
  }
}

/** A coach who opens a session and writes one note after the other, each until it is answered. */
class NoteTaker {
  /** Places by request. */
  readonly acknowledged = new Map<string, number>();
  readonly #screen: WatchingScreen;
  #writing = true;
  readonly #done: Promise<unknown>;

  constructor(address: string) {
    this.#screen = new WatchingScreen(address, MOUND);
    this.#done = this.#say('request-opening', opened()).then(() => Promise.all(Array.from({ length: NOTES_IN_FLIGHT }, (_, hand) => this.#write(hand))));
  }

  close(): void {
    this.#writing = false;
    this.#screen.close();
  }

  async finish(): Promise<void> {
    this.#writing = false;
    await this.#done;
  }

  async #write(hand: number): Promise<void> {
    let note = 0;
    while (this.#writing) {
      note += 1;
      // oxlint-disable-next-line no-await-in-loop -- one note after the other
      await this.#say(`request-${hand}-${note}`, { kind: 'note-written', session: 's-1', place: null, text: `note ${note} of hand ${hand}` });
    }
  }

  async #say(request: string, says: unknown): Promise<void> {
    const reply = await this.#screen.say(request, says);
    if (reply.kind !== 'stored') throw new Error(reply.sentence);
    this.acknowledged.set(request, reply.place);
  }
}
