import type { Server as HttpServer } from 'node:http';
import { Server, type Socket } from 'socket.io';
import { PULSE_SECONDS } from '../../core/facts/heartbeat.ts';
import { screenHelloSchema, watchSchema, type Pulse, type Refusal, type SayReply, type ViewMessage, type WatchReply } from '../../core/facts/wire.ts';
import { SCIENCE_VERSION } from '../../core/session/analyse.ts';
import type { Listening } from '../access/addresses.ts';
import { turnedAway } from '../access/encrypted.ts';
import { NOT_LET_IN, notTheirs } from '../access/may.ts';
import { shownTo } from '../access/shown-to.ts';
import type { WhoAsks } from '../access/who-asks.ts';
import { speakingAs, type Who } from '../access/who.ts';
import { systemStopwatch, type Clock } from '../clock.ts';
import { complaint } from '../complaint.ts';
import type { Presence } from '../devices/presence.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { Metrics } from '../metrics.ts';
import type { OneAtATime } from '../one-at-a-time.ts';
import { Channel } from './channel.ts';
import { backlogOf, type Viewer } from './line.ts';
import { takeStatements } from './speaking.ts';
import { Pace } from './too-fast.ts';
import { LinesPerAddress } from './too-many.ts';
import { inTurns, Turns } from './turns.ts';

/** A line that nobody is let in by does not stay. */
const LET_IN_WITHIN_MS = 5000;
const LARGEST_MESSAGE_BYTES = 256 * 1024;
/** Channels that nobody watches, kept for viewers that come back. */
const IDLE_CHANNELS = 32;

interface Up {
  watch(request: unknown, reply?: (reply: WatchReply) => void): void;
  say(request: unknown, reply?: (reply: SayReply) => void): void;
}
interface Down {
  view(message: ViewMessage): void;
  pulse(pulse: Pulse): void;
  /** The last word to a screen that may no longer see what it sees. */
  ended(why: Refusal): void;
}
type Screen = Socket<Up, Down>;

export interface ScreensParts {
  readonly log: FactLog;
  readonly ledgers: Ledgers;
  readonly presence: Presence;
  readonly clock: Clock;
  readonly listening: Listening;
  readonly whoAsks: WhoAsks;
  readonly metrics: Pick<Metrics, 'refused' | 'slowed' | 'count'>;
  readonly build: string;
  readonly inTurn: OneAtATime;
  onTrouble(error: unknown): void;
}

interface Watched {
  readonly mound: string;
  readonly session: string | null;
  readonly channel: Channel;
}

/** Serves the screens: views and pulses down, what coaches and athletes say up. */
export function serveScreens(http: HttpServer, parts: ScreensParts): { look(): void; close(): Promise<void> } {
  const { log, ledgers, presence, clock, listening, whoAsks, metrics, build, onTrouble } = parts;
  const lines = new LinesPerAddress();
  const io = new Server<Up, Down>(http, {
    serveClient: false,
    destroyUpgrade: false,
    maxHttpBufferSize: LARGEST_MESSAGE_BYTES,
    connectTimeout: LET_IN_WITHIN_MS,
    allowRequest: (request, answer) => {
      const refused = turnedAway(request, listening) ?? lines.turnedAway(request);
      answer(refused, refused === null);
    },
  });
  lines.watch(io);
  const channels = new Map<string, Channel>();
  const turns = new Turns(log);
  const watched = new Map<Viewer, Watched>();
  /** Who each screen is, asked at every use. */
  const screens = new Map<Screen, { readonly viewer: Viewer; who(): Who }>();
  const speak = takeStatements(log, ledgers, parts.inTurn);
  const answer = answering(metrics);
  metrics.count('screen', () => screens.size);

  function channelOf(mound: string, session: string | null, who: Who): Channel {
    const key = `${mound} ${session ?? ''} ${who.kind === 'glance' ? 'glance' : ''}`;
    const channel = channels.get(key) ?? new Channel({
      log: `${log.id}-science-${SCIENCE_VERSION}`,
      session,
      shown: shownTo(who),
      ledger: () => ledgers.of(mound),
      states$: ledgers.states(mound),
      coming$: ledgers.coming(mound),
      spaced: inTurns(turns),
      watch: systemStopwatch,
      // Each connection is a room of its own, and what goes to several rooms is encoded once.
      deliver: (viewers, message) => void io.to(viewers.map(({ id }) => id)).emit('view', message),
      onTrouble,
    });
    channels.delete(key);
    channels.set(key, channel);
    const idle = [...channels].filter(([, one]) => !one.isWatched && one !== channel);
    for (const [old] of idle.slice(0, Math.max(0, idle.length - IDLE_CHANNELS))) channels.delete(old);
    return channel;
  }

  function pulseOf(mound: string): Pulse {
    return { mound, serverAtMs: clock.nowMs(), place: ledgers.of(mound).place, device: presence.stateOf(mound), build };
  }

  /** A slow viewer is not given pulses to pile up as well. */
  function pulse(only: string | null): void {
    for (const [viewer, { mound }] of watched) if ((only === null || mound === only) && !viewer.isSlow()) viewer.pulse(pulseOf(mound));
  }

  function watch(viewer: Viewer, who: Who, value: unknown): WatchReply {
    const request = watchSchema.safeParse(value);
    if (!request.success) return { kind: 'refused', code: 'malformed', ...complaint(request.error) };
    const { mound, session, place, log: knownLog } = request.data;
    const notAllowed = notTheirs(who, { kind: 'watch', mound, session });
    if (notAllowed !== null) return { kind: 'refused', ...notAllowed };
    const channel = channelOf(mound, session, who);
    const before = watched.get(viewer);
    // What was painted of another mound or session cannot be changed into this one.
    const known = before === undefined || before.channel === channel;
    return show(viewer, { mound, session, channel }, known ? place : null, known ? knownLog : null);
  }

  function show(viewer: Viewer, next: Watched, place: number | null, knownLog: string | null): WatchReply {
    watched.get(viewer)?.channel.leave(viewer);
    watched.set(viewer, next);
    if (next.channel.watch(viewer, place, knownLog)) {
      viewer.pulse(pulseOf(next.mound));
      return { kind: 'watching' };
    }
    watched.delete(viewer);
    return { kind: 'refused', code: 'no-view', path: '', sentence: 'The server cannot make a view of this mound; its log says why. What was thrown is safe.' };
  }

  /** Nothing that was shown before holds any more: everybody who watches gets everything anew. */
  function showAnew(): void {
    channels.clear();
    for (const { viewer, who } of screens.values()) {
      const seeing = watched.get(viewer);
      if (seeing === undefined) continue;
      const { mound, session } = seeing;
      show(viewer, { mound, session, channel: channelOf(mound, session, who()) }, 0, '');
    }
  }

  function connected(screen: Screen): void {
    const hello = screenHelloSchema.safeParse(screen.handshake.auth);
    if (!hello.success) return void screen.disconnect(true);
    const { speaker, hangs } = hello.data;
    const backlog = backlogOf(screen.conn, () => watched.get(viewer)?.channel.catchUp(viewer));
    const viewer: Viewer = {
      id: screen.id,
      hangs,
      isSlow: backlog.isSlow,
      pulse: (message) => void screen.emit('pulse', message),
    };
    const who = (): Who => speakingAs(whoAsks(screen.request), speaker);
    screens.set(screen, { viewer, who });
    const pace = new Pace(clock.nowMs);
    screen.use(([event, ...given], next) => {
      const tooFast = pace.refusal(event, who().kind === 'coach');
      if (tooFast === null) return next();
      metrics.slowed('screen');
      answer(given.findLast((one) => typeof one === 'function'), tooFast);
      if (!pace.isHopeless) return;
      screen.emit('ended', tooFast);
      screen.disconnect(true);
    });
    screen.on('watch', (request, reply) => answer(reply, watch(viewer, who(), request)));
    screen.on('say', (request, reply) => {
      pace.said(speak(who(), request)).then((said) => answer(reply, said), (error: unknown) => {
        onTrouble(error);
        answer(reply, { kind: 'refused', code: 'internal', path: '', sentence: 'The server met a fault of its own; its log says which. What was thrown is safe.' });
      });
    });
    screen.on('disconnect', () => {
      watched.get(viewer)?.channel.leave(viewer);
      watched.delete(viewer);
      screens.delete(screen);
    });
  }

  /** Ends the line of every screen that may no longer see what it sees: behind every view that waits already, so that a Glance has been sent the closing of its session. */
  const look = (): void => {
    turns.drop(lookAtAll);
    turns.wish(lookAtAll);
  };

  function lookAtAll(): void {
    for (const [screen, { viewer, who }] of [...screens]) {
      const now = who();
      const seeing = watched.get(viewer);
      const notAllowed = seeing === undefined ? (now.kind === 'nobody' ? NOT_LET_IN : null) : notTheirs(now, { kind: 'watch', ...seeing });
      if (notAllowed === null) continue;
      screen.emit('ended', { kind: 'refused', ...notAllowed });
      screen.disconnect(true);
    }
  }

  io.use((screen, next) => {
    const refused: Refusal | null = whoAsks(screen.request).kind === 'nobody' ? { kind: 'refused', ...NOT_LET_IN } : lines.refusal(screen.conn.remoteAddress);
    if (refused !== null) metrics.refused('screen', refused.code);
    next(refused === null ? undefined : Object.assign(new Error(refused.code), { data: refused }));
  });
  io.on('connection', connected);
  const stopPulse = clock.every(PULSE_SECONDS * 1000, () => {
    look();
    pulse(null);
  });
  ledgers.onRefolded(showAnew);
  const stopPresence = presence.onChange(pulse);

  return {
    look,
    async close() {
      stopPulse();
      stopPresence();
      await io.close();
    },
  };
}

/** Gives a reply to whoever wants one, and counts it where it refuses. */
function answering(metrics: Pick<Metrics, 'refused'>) {
  return <Reply extends WatchReply | SayReply>(reply: ((reply: Reply) => void) | undefined, value: Reply): void => {
    if (value.kind === 'refused') metrics.refused('screen', value.code);
    if (typeof reply === 'function') reply(value);
  };
}
