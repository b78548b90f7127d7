import { io } from 'socket.io-client';
import type { Athlete, CoachSays } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { SayReply, ViewMessage, WatchReply } from '../../core/facts/wire.ts';
import { applyChange } from '../../core/session/change.ts';
import type { TestServer } from './server.ts';

export const ATHLETE: Athlete = { id: 'wren', name: 'Wren Abelow', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' };

/** A coach at a tablet, without the tablet: says things and sees what screens are sent. */
export interface TestCoach {
  /** Says it and gives the place in the log; a refusal is an error. */
  say(says: CoachSays): Promise<number>;
  /** Every view that was sent, by the place it stands at. */
  readonly views: ReadonlyMap<number, MoundView>;
  /** Views left out because this side was slow. */
  readonly skipped: () => number;
  /** Resolves with the first view at or beyond a place. */
  reaches(place: number): Promise<MoundView>;
  close(): void;
}

/** Watches a mound, with null whoever has it, from its first view on. A server that others reach wants the cookie of a sign-in. */
export async function connectCoach({ address }: Pick<TestServer, 'address'>, mound: string, session: string | null = null, cookie = ''): Promise<TestCoach> {
  const socket = io(address, { transports: ['websocket'], forceNew: true, extraHeaders: { cookie } });
  const views = new Map<number, MoundView>();
  const waiting = new Set<() => void>();
  let newest: MoundView | null = null;
  let skipped = 0;
  let requests = 0;
  socket.on('view', (message: ViewMessage) => {
    if (message.kind === 'snapshot') newest = message.view;
    else {
      if (newest?.place !== message.from) throw new Error(`A change from place ${message.from} came to a screen at ${newest?.place}.`);
      newest = applyChange(newest, message);
      skipped += message.skipped;
    }
    views.set(newest.place, newest);
    for (const look of waiting) look();
  });
  const reaches = (place: number): Promise<MoundView> =>
    new Promise((resolve) => {
      const look = (): void => {
        if (newest === null || newest.place < place) return;
        waiting.delete(look);
        resolve(newest);
      };
      waiting.add(look);
      look();
    });
  const reply = (await socket.emitWithAck('watch', { mound, session, place: null, log: null })) as WatchReply;
  if (reply.kind !== 'watching') throw new Error(`The coach may not watch: ${reply.sentence}`);
  await reaches(0);
  return {
    views,
    skipped: () => skipped,
    reaches,
    async say(says) {
      requests += 1;
      const answer = (await socket.emitWithAck('say', { request: `test-${socket.id}-${requests}`, mound, says })) as SayReply;
      if (answer.kind !== 'stored') throw new Error(`Refused at ${answer.path}: ${answer.sentence}`);
      return answer.place;
    },
    close: () => void socket.close(),
  };
}

/** What a coach says to begin: a session on a mound, the pitch's intent, its trial and its zone. */
export function opening(session: string, athlete: Athlete = ATHLETE): CoachSays {
  return { kind: 'session-opened', session, athlete, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.4404, effort: 'full' };
}
