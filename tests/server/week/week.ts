import { setImmediate } from 'node:timers/promises';
import { io, type Socket } from 'socket.io-client';
import { expect } from 'vitest';
import type { SayReply, WatchReply } from '../../../core/facts/wire.ts';
import { collect } from '../../collected.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest } from '../running.ts';

const HOUR_MS = 3_600_000;
const MOUNDS = ['north-1', 'south-2'];
const FASTBALLS = 6;
/** Turns of the event loop within which everything that was closed is gone; a leak never is. */
const TURNS = 10_000;

interface Week {
  readonly days: number;
  readonly sessionsOfDay: number;
  readonly throwsOfSession: number;
  /** Throws of closed sessions that the server holds at hand; few, so that a week is long. */
  readonly throwsAtHand: number;
}

/** How the program stands at the end of a day, when everybody has gone. */
interface Evening {
  readonly heapBytes: number;
  /** What keeps the event loop alive, by kind: sockets, timers, files. */
  readonly handles: Readonly<Record<string, number>>;
}

/** Days on a clock moved by hand: sessions are opened, thrown and closed, viewers come, go and come back, recordings are looked at, then it is night. */
export async function weekOf({ days, sessionsOfDay, throwsOfSession, throwsAtHand }: Week): Promise<Evening[]> {
  const clock = handClock();
  const server = await serverForTest({ clock, throwsAtHand });
  const evenings: Evening[] = [];
  for (let day = 1; day <= days; day += 1) {
    for (let number = 1; number <= sessionsOfDay; number += 1) {
      const mound = MOUNDS[number % MOUNDS.length]!;
      // oxlint-disable-next-line no-await-in-loop -- one session after the other is what a day is
      await sessionOn(mound, `day-${day}-${number}`, `athlete-${number}`);
      clock.advance(HOUR_MS / 2);
    }
    // oxlint-disable-next-line no-await-in-loop -- the same
    await get(server, `/api/sessions/day-1-1`);
    // oxlint-disable-next-line no-await-in-loop -- the same
    await get(server, '/api/athletes/athlete-1/records');
    clock.advance((24 - sessionsOfDay / 2) * HOUR_MS);
    // oxlint-disable-next-line no-await-in-loop -- the same
    evenings.push(await evening(evenings[0]?.handles ?? null));
  }
  return evenings;

  async function sessionOn(mound: string, session: string, athlete: string): Promise<void> {
    const bench = await screen(mound, null);
    const say = async (says: Record<string, unknown>): Promise<void> => {
      expect(await (bench.emitWithAck('say', { request: `${session}-${requests += 1}`, mound, says }) as Promise<SayReply>)).toMatchObject({ kind: 'stored' });
    };
    await say(opened(session, { athlete: { ...ATHLETE, id: athlete, name: `Invented ${athlete}` } }));
    const wall = await screen(mound, session);
    const { client } = await DeviceClient.greet(server.address, server.token, { mound, device: `eye-${mound}`, run: session });
    await say({ kind: 'intent-set', session, intent: 'four-seam' });
    for (let sequence = 1; sequence <= throwsOfSession; sequence += 1) {
      if (sequence === FASTBALLS) await say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words: 'through', focus: null } });
      const body = summary(sequence < FASTBALLS ? 90 : 80 + (sequence % 3));
      expect(await client.ask({ kind: 'throw', sequence, time: sequence * 1000, body })).toEqual({ kind: 'stored', sequence });
      clock.advance(8000);
      if (sequence === FASTBALLS + 1) await gone(wall);
    }
    const again = await screen(mound, session);
    await say({ kind: 'session-closed', session });
    await say({ kind: 'note-written', session, text: 'said afterwards', place: null });
    await client.leave();
    await Promise.all([gone(again), gone(bench)]);
  }

  async function screen(mound: string, session: string | null): Promise<Socket> {
    const socket = io(server.address, { transports: ['websocket'], forceNew: true, reconnection: false });
    await heard(socket, 'connect');
    expect(await (socket.emitWithAck('watch', { mound, session, place: null, log: null }) as Promise<WatchReply>)).toEqual({ kind: 'watching' });
    return socket;
  }
}

let requests = 0;

const heard = (socket: Socket, event: string): Promise<void> => new Promise((resolve) => void socket.once(event, () => resolve()));

async function gone(socket: Socket): Promise<void> {
  const left = heard(socket, 'disconnect');
  socket.disconnect();
  await left;
}

/** Both ends of what was closed are gone a few turns later. */
async function evening(first: Evening['handles'] | null): Promise<Evening> {
  let handles = handlesNow();
  for (let turn = 0; turn < TURNS && (first === null ? (handles['TCPSocketWrap'] ?? 0) > 0 : JSON.stringify(handles) !== JSON.stringify(first)); turn += 1) {
    // oxlint-disable-next-line no-await-in-loop -- turn by turn
    await setImmediate();
    handles = handlesNow();
  }
  collect();
  return { heapBytes: process.memoryUsage().heapUsed, handles };
}

function handlesNow(): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const kind of process.getActiveResourcesInfo().filter((one) => one !== 'Immediate').sort()) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}
