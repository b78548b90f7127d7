import { once } from 'node:events';
import { io, type Socket } from 'socket.io-client';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import type { Refusal } from '../../../core/facts/wire.ts';
import { LinesPerAddress } from '../../../server/viewers/too-many.ts';
import { serverForTest, type TestServer } from '../running.ts';

/** Opens a line and says nothing on it. */
async function line(server: TestServer): Promise<WebSocket> {
  const socket = new WebSocket(`${server.address.replace('http', 'ws')}/socket.io/?EIO=4&transport=websocket`);
  await once(socket, 'open');
  return socket;
}

function screen(server: TestServer, localAddress: string): Socket {
  // Its transport hands this on to the socket under it, which its types do not say.
  const from = { localAddress };
  const socket = io(server.address, { transports: ['websocket'], forceNew: true, reconnection: false, ...from });
  onTestFinished(() => void socket.close());
  return socket;
}

const howItWent = (socket: Socket): Promise<string> => new Promise((resolve) => {
  socket.once('connect', () => resolve('let in'));
  socket.once('connect_error', (error: Error & { readonly data?: Refusal }) => resolve(`${error.data?.code}: ${error.data?.sentence}`));
});

test('one machine may have 512 screens open; the next is told so, other machines are let in, and once one is closed there is room again', async () => {
  const server = await serverForTest();
  const lines = await Promise.all(Array.from({ length: 512 }, () => line(server)));
  expect(await howItWent(screen(server, '127.0.0.1'))).toBe('too-many-screens: From this machine 512 screens are open already; close some, then load this page anew.');
  expect(await howItWent(screen(server, '127.0.0.2'))).toBe('let in');
  const closed = lines.splice(0, 100).map((one) => (one.close(), once(one, 'close')));
  await Promise.all(closed);
  expect(await howItWent(screen(server, '127.0.0.1'))).toBe('let in');
  for (const one of lines) one.terminate();
});

test('lines beyond 1024 of one machine are not opened at all; those that stand go on', () => {
  const heard: ((line: unknown) => void)[] = [];
  const ends: (() => void)[] = [];
  const counted = new LinesPerAddress();
  counted.watch({ engine: { on: (_: string, then: (line: unknown) => void) => void heard.push(then) } as never });
  const come = (address: string): void => heard[0]!({ remoteAddress: address, once: (_: string, then: () => void) => void ends.push(then) });
  const asks = (address: string, url: string): string => (counted.turnedAway({ url, socket: { remoteAddress: address } as never }) === null ? 'opened' : 'turned away');
  for (let count = 0; count < 1024; count += 1) come('192.0.2.7');
  expect(asks('192.0.2.7', '/socket.io/?EIO=4&transport=websocket')).toBe('turned away');
  expect(asks('192.0.2.7', '/socket.io/?EIO=4&transport=polling&sid=abc')).toBe('opened');
  expect(asks('192.0.2.8', '/socket.io/?EIO=4&transport=websocket')).toBe('opened');
  ends[0]!();
  ends[0]!();
  expect(asks('192.0.2.7', '/socket.io/?EIO=4&transport=websocket')).toBe('opened');
});
