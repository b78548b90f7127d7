import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Server } from 'socket.io';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { saySchema, watchSchema, type SayRequest, type WatchRequest } from '../../core/facts/wire.ts';
import { emptyLedger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import { openTablet, type Tablet } from '../../simulators/coach.ts';

let viewers: Server;
let tablet: Tablet;
let heard: SayRequest[];
let watched: WatchRequest[];
const says = { kind: 'session-closed', session: 'mine' } as const;

beforeEach(async () => {
  heard = [];
  watched = [];
  const http = createServer();
  viewers = new Server(http);
  viewers.on('connection', (socket) => {
    socket.on('watch', (request, answer) => {
      watched.push(watchSchema.parse(request));
      answer({ kind: 'watching' });
      const view = moundView(emptyLedger('north-1'), null);
      socket.emit('view', { kind: 'snapshot', log: 'log-1', reason: 'first', view });
      socket.emit('view', { kind: 'change', log: 'log-1', from: 0, skipped: 0, head: { place: 3 }, throws: [], gone: [], unclaimed: [] });
    });
    socket.on('say', (request, answer) => {
      heard.push(saySchema.parse(request));
      answer({ kind: 'stored', place: heard.length });
    });
  });
  http.listen(0, '127.0.0.1');
  await once(http, 'listening');
  tablet = openTablet(`http://127.0.0.1:${(http.address() as AddressInfo).port}`, 'north-1', 'simulated-start1', () => {});
});
afterEach(async () => {
  tablet.close();
  await viewers.close();
});

it('the simulated coach watches whoever has the mound, and knows the newest head', async () => {
  await new Promise<void>((resolve) => {
    tablet.onHead(({ place }) => {
      if (place === 3) resolve();
    });
  });
  expect(tablet.head?.place).toBe(3);
  expect(watched).toEqual([{ mound: 'north-1', session: null, place: null, log: null }]);
});

it('says each thing under a request name of its own', async () => {
  expect(await tablet.say(says)).toEqual({ kind: 'stored', place: 1 });
  expect(await tablet.say(says)).toEqual({ kind: 'stored', place: 2 });
  expect(heard.map(({ says }) => says)).toEqual([says, says]);
  expect(new Set(heard.map(({ request }) => request)).size).toBe(2);
});

it('hears from itself when the server does not answer', async () => {
  await tablet.say(says);
  const gone = viewers.close();
  const reply = tablet.say(says);
  tablet.close();
  await gone;
  expect(await reply).toMatchObject({ kind: 'refused', code: 'no-answer' });
});
