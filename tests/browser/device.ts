import { once } from 'node:events';
import { WebSocket } from 'ws';
import type { DeviceFrame, Hello, ServerFrame, ThrowBody } from '../../core/facts/frames.ts';
import type { TestServer } from './server.ts';

type DeviceHello = Omit<Hello, 'kind' | 'protocol' | 'token'>;

/** An invented device that sees the whole flight, in feet, miles an hour and inches. */
const EYE: DeviceHello = {
  device: 'eye-1', run: 'run-a', mound: 'north-1', sight: 'full-flight', axis: 'measured',
  units: { distance: 'ft', speed: 'mph', movement: 'in' },
};

/** A device at the door: a plain WebSocket that has said hello. */
export interface TestDevice {
  readonly welcome: Extract<ServerFrame, { kind: 'welcome' }>;
  /** Sends a frame and waits for its answer: stored or refused. */
  send(frame: Exclude<DeviceFrame, { kind: 'heartbeat' }>): Promise<ServerFrame>;
  /** Sends a throw and waits until it is stored; anything else is an error. */
  throws(sequence: number, body: ThrowBody): Promise<void>;
  /** Sends without waiting; `stored` tells what came back. */
  sendOnly(frame: DeviceFrame): void;
  /** Sequence numbers acknowledged as stored so far. */
  readonly stored: ReadonlySet<number>;
  /** Ends when the connection does, from whichever side. */
  readonly closed: Promise<void>;
  close(): Promise<void>;
}

/** Connects, says hello as the invented device or unlike it in something, and waits to be welcomed. */
export async function connectDevice({ address, token }: Pick<TestServer, 'address' | 'token'>, unlike: Partial<DeviceHello> = {}): Promise<TestDevice> {
  const socket = new WebSocket(`${address.replace(/^http/, 'ws')}/device`);
  const waiting = new Map<number, (frame: ServerFrame) => void>();
  const stored = new Set<number>();
  let welcomed!: (frame: ServerFrame) => void;
  const welcome = new Promise<ServerFrame>((resolve) => {
    welcomed = resolve;
  });
  socket.on('message', (data) => {
    const frame = JSON.parse((data as Buffer).toString()) as ServerFrame;
    if (frame.kind === 'welcome' || frame.sequence === null) return welcomed(frame);
    if (frame.kind === 'stored') stored.add(frame.sequence);
    waiting.get(frame.sequence)?.(frame);
  });
  const closed = once(socket, 'close').then(() => {});
  socket.on('error', () => {});
  await once(socket, 'open');
  socket.send(JSON.stringify({ kind: 'hello', protocol: 1, token, ...EYE, ...unlike }));
  const answer = await welcome;
  if (answer.kind !== 'welcome') throw new Error(`The device was not welcomed: ${JSON.stringify(answer)}`);

  const sendOnly = (frame: DeviceFrame): void => socket.send(JSON.stringify(frame));
  const send = (frame: Exclude<DeviceFrame, { kind: 'heartbeat' }>): Promise<ServerFrame> =>
    new Promise((resolve) => {
      waiting.set(frame.sequence, resolve);
      sendOnly(frame);
    });
  return {
    welcome: answer,
    send,
    sendOnly,
    stored,
    closed,
    async throws(sequence, body) {
      const reply = await send({ kind: 'throw', sequence, time: sequence * 1000, body });
      if (reply.kind !== 'stored') throw new Error(`Throw ${sequence} was not stored: ${JSON.stringify(reply)}`);
    },
    async close() {
      socket.close();
      await closed;
    },
  };
}

const BEAT_MS = 1000;

/** Lets a device send its heartbeats, one at once and then every second, until its connection ends. Without them it counts as silent after some seconds. */
export function keepBeating(device: TestDevice): void {
  const beat = (): void => device.sendOnly({ kind: 'heartbeat', time: 0 });
  beat();
  const beating = setInterval(beat, BEAT_MS);
  void device.closed.then(() => clearInterval(beating));
}

/** The throws of a device that numbers them itself, from 1 on, each stored before the next is let go. */
export type CountedThrows = (body: ThrowBody, times?: number) => Promise<void>;

export function counted(device: TestDevice): CountedThrows {
  let sequence = 0;
  return async (body, times = 1) => {
    for (let thrown = 0; thrown < times; thrown += 1) await device.throws((sequence += 1), body);
  };
}
