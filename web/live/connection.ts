import { distinctUntilChanged, fromEvent, interval, map, merge, scan, shareReplay, Subject, type Observable } from 'rxjs';
import { io } from 'socket.io-client';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Pulse, SayReply, Speaker, ViewMessage, WatchReply, WatchRequest } from '../../core/facts/wire.ts';
import { nowMs } from './clock.ts';
import { nextLink, UNLINKED, type LinkEvent, type LinkState } from './link.ts';
import { sayTo } from './say.ts';

const LOOK_EVERY_MS = 500;

/** One screen's line to the server: the state it fills, and the way to say something. */
export interface Connection {
  readonly state$: Observable<LinkState>;
  say(says: CoachSays): Promise<SayReply>;
  close(): void;
}

/** Watches a mound: a fixed session of it, or with null whoever has it. Reconnects by the last place that it knows. */
export function connect(mound: string, session: string | null, speaker: Speaker): Connection {
  const socket = io({ auth: { speaker }, reconnectionDelay: 250, reconnectionDelayMax: 2000 });
  const own$ = new Subject<LinkEvent>();
  const heard = <T>(name: string): Observable<T> => fromEvent(socket, name) as Observable<T>;
  const events$: Observable<LinkEvent> = merge(
    own$,
    heard<ViewMessage>('view').pipe(map((message): LinkEvent => ({ kind: 'view', message, atMs: nowMs() }))),
    heard<Pulse>('pulse').pipe(map((pulse): LinkEvent => ({ kind: 'pulse', pulse, atMs: nowMs() }))),
    heard('disconnect').pipe(map((): LinkEvent => ({ kind: 'disconnected' }))),
    interval(LOOK_EVERY_MS).pipe(map((): LinkEvent => ({ kind: 'tick', atMs: nowMs() }))),
  );
  const state$ = events$.pipe(scan(nextLink, UNLINKED), distinctUntilChanged(), shareReplay(1));

  let known: LinkState = UNLINKED;
  const watch = (): void => {
    const request: WatchRequest = { mound, session, place: known.view?.place ?? null, log: known.log };
    socket.emit('watch', request, (reply: WatchReply) => {
      if (reply.kind === 'refused') own$.next({ kind: 'refused', refusal: reply });
    });
  };
  const following = state$.subscribe((state) => {
    const misfit = state.misfits > known.misfits;
    known = state;
    if (misfit) watch();
  });
  socket.on('connect', () => {
    own$.next({ kind: 'connected' });
    watch();
  });
  return {
    state$,
    say: (says) => sayTo(socket, mound, says),
    close: () => {
      following.unsubscribe();
      socket.close();
    },
  };
}
