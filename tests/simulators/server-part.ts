import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { WebSocketServer, type WebSocket } from 'ws';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Fact, Said } from '../../core/facts/fact.ts';
import { deviceFrameSchema, HEARTBEAT_SECONDS, helloSchema, type DeviceFrame, type Hello, type ServerFrame } from '../../core/facts/frames.ts';
import type { MoundHead } from '../../core/facts/views.ts';
import type { SayReply } from '../../core/facts/wire.ts';
import { objection } from '../../core/session/admit.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import type { Clock } from '../../device/clock.ts';
import type { Tablet } from '../../simulators/coach.ts';

type Answer = (frame: Exclude<DeviceFrame, { kind: 'heartbeat' }>) => ServerFrame | null;
type Heard = { readonly kind: 'hello'; readonly hello: Hello } | DeviceFrame;

/** What the device of a test says first. */
export const HELLO: Hello = {
  kind: 'hello', protocol: 1, device: 'reader', run: 'run-1', mound: 'north-1', token: 'secret',
  sight: 'spin-only', axis: 'measured', units: { distance: 'ft', speed: 'mph', movement: 'in' },
};

/** Plays the server's part for one mound, with core's own folds behind it and nothing on disk. */
export interface ServerPart {
  readonly url: string;
  readonly facts: readonly Fact[];
  /** Everything that was heard, in order. */
  readonly heard: readonly Heard[];
  /** How many connections have come. */
  readonly connections: number;
  /** Another answer than `stored`, or with null none at all; undefined goes back to storing. */
  answering: Answer | undefined;
  /** Stores throws of a run without telling the device, as when the answer is lost on the way. */
  storeSilently(hello: Hello, sequences: readonly number[]): void;
  /** A tablet at this mound, as the simulated coach has one. */
  tablet(): Tablet;
  /** A person at Bench says something. */
  personSays(says: CoachSays): SayReply;
  view(): ReturnType<typeof moundView>;
  /** Resolves once the condition holds; looked at after everything that is heard. */
  until(condition: () => boolean): Promise<void>;
  /** Resolves when everything that devices have sent so far is answered and the answers have arrived. */
  roundTrip(): Promise<void>;
  /** Cuts every connection. */
  cut(): void;
  close(): Promise<void>;
}

export async function playServer(clock: Clock, mound = 'north-1'): Promise<ServerPart> {
  const server = new WebSocketServer({ port: 0, host: '127.0.0.1' });
  await once(server, 'listening');
  const facts: Fact[] = [];
  const heard: Heard[] = [];
  const settled = new Map<string, Set<number>>();
  const watchers = new Set<(head: MoundHead) => void>();
  const conditions = new Set<() => void>();
  let ledger = emptyLedger(mound);
  let connections = 0;
  let answering: Answer | undefined;

  const store = (said: Said, by: string): number => {
    const fact: Fact = { place: facts.length + 1, mound, atMs: clock.nowMs(), by, version: 1, said };
    facts.push(fact);
    ledger = foldFact(ledger, fact);
    const head = moundView(ledger, null);
    for (const watcher of watchers) watcher(head);
    return fact.place;
  };
  const say = (says: CoachSays): SayReply => {
    const against = objection(ledger, says);
    return against === null ? { kind: 'stored', place: store(says, 'coach') } : { kind: 'refused', ...against };
  };
  const take = (hello: Hello, frame: Exclude<DeviceFrame, { kind: 'heartbeat' }>): void => {
    const numbers = settled.get(hello.run)!;
    if (numbers.has(frame.sequence)) return;
    numbers.add(frame.sequence);
    const { device, run, sight, axis, units, standardErrors } = hello;
    const source = { device, run, sight, axis, units, ...(standardErrors && { standardErrors }), sequence: frame.sequence, time: frame.time };
    if (frame.kind === 'throw') store({ kind: 'throw-measured', source, body: frame.body }, `device:${device}`);
    else store({ kind: 'throw-corrected', source, corrects: { run: frame.corrects.run ?? run, sequence: frame.corrects.sequence }, reason: frame.reason ?? null, body: frame.body }, `device:${device}`);
  };

  server.on('connection', (socket: WebSocket) => {
    connections += 1;
    let hello: Hello | null = null;
    const reply = (frame: ServerFrame): void => socket.send(JSON.stringify(frame));
    socket.on('message', (data) => {
      const value: unknown = JSON.parse(String(data));
      if (hello === null) {
        hello = helloSchema.parse(value);
        heard.push({ kind: 'hello', hello });
        const numbers = settled.get(hello.run) ?? new Set<number>();
        settled.set(hello.run, numbers);
        reply(welcomeFor(numbers));
      } else {
        const frame = deviceFrameSchema.parse(value);
        heard.push(frame);
        if (frame.kind !== 'heartbeat') {
          if (answering !== undefined) {
            const answer = answering(frame);
            if (answer !== null) reply(answer);
          } else {
            take(hello, frame);
            reply({ kind: 'stored', sequence: frame.sequence });
          }
        }
      }
      for (const look of conditions) look();
    });
  });

  return {
    url: `ws://127.0.0.1:${(server.address() as AddressInfo).port}/device`,
    facts,
    heard,
    get connections() {
      return connections;
    },
    get answering() {
      return answering;
    },
    set answering(answer) {
      answering = answer;
    },
    storeSilently(hello, sequences) {
      for (const frame of heard) if (frame.kind === 'throw' && sequences.includes(frame.sequence)) take(hello, frame);
    },
    tablet: () => tabletOn(watchers, () => moundView(ledger, null), say),
    personSays: say,
    view: () => moundView(ledger, null),
    until: (condition) => new Promise((resolve) => {
      const look = (): void => {
        if (!condition()) return;
        conditions.delete(look);
        resolve();
      };
      conditions.add(look);
      look();
    }),
    async roundTrip() {
      for (let trip = 0; trip < 2; trip += 1) await Promise.all([...server.clients].map(pinged));
    },
    cut: () => {
      for (const socket of server.clients) socket.terminate();
    },
    close: async () => {
      for (const socket of server.clients) socket.terminate();
      server.close();
      await once(server, 'close');
    },
  };
}

function welcomeFor(numbers: ReadonlySet<number>): ServerFrame {
  const highest = Math.max(0, ...numbers);
  const missing = Array.from({ length: highest }, (_, index) => index + 1).filter((number) => !numbers.has(number));
  const gaps: [number, number][] = [];
  for (const number of missing) {
    const last = gaps.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else gaps.push([number, number]);
  }
  return { kind: 'welcome', protocol: 1, settledThrough: gaps[0] === undefined ? highest : gaps[0][0] - 1, gaps, heartbeatSeconds: HEARTBEAT_SECONDS };
}

function tabletOn(watchers: Set<(head: MoundHead) => void>, head: () => MoundHead, say: (says: CoachSays) => SayReply): Tablet {
  const own = new Set<(head: MoundHead) => void>();
  return {
    get head() {
      return head();
    },
    say: (says) => Promise.resolve(say(says)),
    onHead(then) {
      watchers.add(then);
      own.add(then);
      return () => {
        watchers.delete(then);
        own.delete(then);
      };
    },
    close: () => {
      for (const then of own) watchers.delete(then);
    },
  };
}

function pinged(socket: WebSocket): Promise<void> {
  return new Promise((resolve) => {
    if (socket.readyState !== socket.OPEN) return resolve();
    const done = (): void => {
      socket.off('pong', done);
      socket.off('close', done);
      resolve();
    };
    socket.on('pong', done);
    socket.on('close', done);
    socket.ping();
  });
}
