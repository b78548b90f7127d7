import { io } from 'socket.io-client';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { Pulse, Refusal, SayReply, ScreenHello, ViewMessage, WatchReply, WatchRequest } from '../../core/facts/wire.ts';
import { askForFrame } from './ask-for-frame.ts';
import { nowMs } from './clock.ts';
import { heardRefusal } from './nobody-here.ts';
import { nextLink, UNLINKED, type LinkEvent, type LinkState } from './link.ts';
import { sayTo } from './say.ts';

const LOOK_EVERY_MS = 500;

/** One screen's line to the server: the state it fills, and the way to say something. */
export interface Connection {
  /** @param request its name, when it is asked again what was asked before; a new one else */
  say(says: CoachSays, request?: string): Promise<SayReply>;
  close(): void;
}

/** How long a server may take before what this screen remembers is shown instead. */
const REMEMBER_AFTER_MS = 2500;

/** What a screen still knows from an earlier time, and when the server was heard then. */
export interface Remembered {
  readonly view: MoundView;
  readonly heardAtMs: number;
}

/**
 * Watches a mound: a fixed session of it, or with null whoever has it. Reconnects by the last place that it knows.
 * @param tell called with every new state, from the first that differs from an unlinked one
 * @param remember asked once where the server cannot be reached at first
 */
export function connect(mound: string, session: string | null, hello: ScreenHello, tell: (state: LinkState) => void = () => {}, remember: () => Remembered | null = () => null): Connection {
  const socket = io({ auth: hello, reconnectionDelay: 250, reconnectionDelayMax: 2000 });
  let known: LinkState = UNLINKED;
  const watch = (): void => {
    const request: WatchRequest = { mound, session, place: known.view?.place ?? null, log: known.log };
    socket.emit('watch', request, (reply: WatchReply) => {
      if (reply.kind === 'refused') happened({ kind: 'refused', refusal: reply });
    });
  };
  const happened = (event: LinkEvent): void => {
    const before = known;
    known = nextLink(before, event);
    if (known === before) return;
    if (known.misfits > before.misfits) watch();
    tell(known);
    if (known.refused !== null && known.refused !== before.refused) heardRefusal(known.refused);
  };
  socket.on('connect', () => {
    happened({ kind: 'connected' });
    watch();
  });
  socket.on('disconnect', () => happened({ kind: 'disconnected' }));
  socket.on('view', (message: ViewMessage) => {
    askForFrame();
    happened({ kind: 'view', message, atMs: nowMs() });
  });
  socket.on('pulse', (pulse: Pulse) => happened({ kind: 'pulse', pulse, atMs: nowMs() }));
  socket.on('ended', (refusal: Refusal) => happened({ kind: 'refused', refusal }));
  // Only a server that refuses says why; a line that breaks comes again by itself.
  socket.on('connect_error', ({ data }: Error & { readonly data?: Refusal }) => {
    if (data === undefined) rememberOnce();
    else happened({ kind: 'refused', refusal: data });
  });
  const waiting = setTimeout(() => rememberOnce(), REMEMBER_AFTER_MS);
  const rememberOnce = (): void => {
    clearTimeout(waiting);
    const remembered = known.heardAtMs === null ? remember() : null;
    if (remembered !== null) happened({ kind: 'remembered', ...remembered });
  };
  const looking = setInterval(() => happened({ kind: 'tick', atMs: nowMs() }), LOOK_EVERY_MS);
  return {
    say: (says, request) => sayTo(socket, mound, says, request),
    close: () => {
      clearInterval(looking);
      clearTimeout(waiting);
      socket.close();
    },
  };
}
