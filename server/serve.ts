import type { IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import type { Duplex } from 'node:stream';
import type { DestinationStream, Logger } from 'pino';
import { sessionIn } from '../core/session/ledger.ts';
import { exposed, hostsOf, type Exposed, type Listening } from './access/addresses.ts';
import { selfMade } from './access/authority.ts';
import { givenCertificate, type Secured } from './access/certificate.ts';
import { turnedAway } from './access/encrypted.ts';
import { writeEntries } from './access/entries.ts';
import { keepAccess } from './access/keep-access.ts';
import { httpApp } from './api/app.ts';
import { metricRoutes } from './api/metric-routes.ts';
import { buildOf, pages } from './api/pages.ts';
import { apiRoutes } from './api/routes.ts';
import { newId, newSecret } from './chance.ts';
import type { ReadAnew } from './catch-up.ts';
import { systemClock, type Clock } from './clock.ts';
import { openDiary } from './diary.ts';
import { Imports } from './files-in/imports.ts';
import { readRecipes } from './files-in/recipes.ts';
import { openDoor } from './devices/door.ts';
import { keepPresence } from './devices/presence.ts';
import { stageOf } from './devices/stage-of.ts';
import { followLedgers } from './ledgers.ts';
import { addressHere, httpServer, listen, speakTls } from './listening.ts';
import { shelfBeside } from './log/shelf.ts';
import { openSqliteLog } from './log/sqlite-log.ts';
import { keepMetrics } from './metrics.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { StartFailure } from './start-failure.ts';
import { serveScreens } from './viewers/screens.ts';

export interface ServerOptions {
  /** 0 for any free one. */
  readonly port: number;
  readonly host: string;
  readonly dataFolder: string;
  /** Where the built screens are. */
  readonly webFolder: string;
  /** Where the coaches' passphrase stands, for the first time or to change it; needed where other machines reach the server. */
  readonly passphraseFile?: string;
  /** Asks whoever starts the server for a passphrase where one is needed and there is none yet. */
  askPassphrase?(): Promise<string>;
  /** How to encrypt: by a certificate that is made here, or by files of a given one. Without it nothing is encrypted. */
  readonly tls?: 'self-made' | { readonly certFile: string; readonly keyFile: string };
  /** Throws of closed sessions that stay in memory, over all mounds; left out, enough for whoever looks around. */
  readonly throwsAtHand?: number;
  /** Told now and then while a start takes long because it reads the records anew, and when it has read them. */
  onReading?(so: ReadAnew): void;
  /** Ends a start that still reads records; its reason is thrown then, and what was read is kept for the next one. */
  readonly stop?: AbortSignal;
  readonly clock?: Clock;
  readonly logLevel?: 'info' | 'silent';
  /** Where the diary goes; left out, to standard output. */
  readonly diaryTo?: DestinationStream;
}

export interface RunningServer {
  /** As this machine itself reaches it, such as http://127.0.0.1:8080. */
  readonly address: string;
  readonly port: number;
  /** Holds the token that devices on this machine show. */
  readonly tokenFile: string;
  /** Null where only this machine reaches it. */
  readonly exposed: Exposed | null;
  close(): Promise<void>;
}

/**
 * Wires the rooms together and listens.
 * @throws {StartFailure} when the data folder or the port cannot be used; nothing is left open then
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { port, host, dataFolder, webFolder, clock = systemClock, logLevel = 'info' } = options;
  const diary = openDiary(logLevel, options.diaryTo);
  const onTrouble = (error: unknown): void => diary.error({ err: error }, 'something failed');
  const opened = openSqliteLog({ file: path.join(dataFolder, 'facts.db'), nowMs: clock.nowMs, newId, onTrouble });
  if (opened.kind === 'failed') throw new StartFailure(opened.sentence);
  const { log, keptCopy } = opened;
  if (keptCopy !== null) diary.info({ keptCopy }, 'the log was brought to a newer format; a copy as it was is kept');
  try {
    const onReading = (so: ReadAnew): void => {
      writeReading(diary, so);
      options.onReading?.(so);
    };
    const ledgers = await followLedgers(log, shelfBeside(path.join(dataFolder, 'facts.db')), onTrouble, { nowMs: clock.nowMs, onReading, ...(options.stop === undefined ? {} : { stop: options.stop }) }, options.throwsAtHand);
    const access = await keepAccess({ ...options, nowMs: clock.nowMs, isOpen: (mound, session) => sessionIn(ledgers.of(mound), session)?.closedAtMs === null });
    const { grants } = access;
    const secured = await securedBy(options, clock);
    const listening: Listening = { host, tls: secured !== null, authority: secured?.authority ?? null };
    const presence = keepPresence(clock);
    const build = buildOf(webFolder);
    const metrics = keepMetrics();
    const inTurn = oneAtATime();
    const imports = new Imports(log, ledgers, dataFolder);
    const http = httpServer(httpApp({ metrics: metricRoutes(metrics, access.whoAsks), api: apiRoutes({ ...access, entries: writeEntries(diary, clock.nowMs), log, ledgers, presence, build, listening, dataFolder, inTurn, imports, readRecipes: () => readRecipes(dataFolder) }), pages: pages(webFolder, access.whoAsks), listening, onTrouble }));
    const door = openDoor({ log, clock, presence, metrics, diary, entryFor: access.devices.entryFor, stageOf: (mound, place) => stageOf(ledgers.of(mound), place), onTrouble });
    http.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => upgrade(request, socket, head, listening, door.upgrade));
    const screens = serveScreens(http, { log, ledgers, presence, clock, listening, whoAsks: access.whoAsks, metrics, build, inTurn, onTrouble });
    grants.onEnded(screens.look);
    grants.onEnded(door.look);
    log.onAppended(metrics.stored);
    log.onAppended(({ mound, said }) => {
      if (said.kind === 'session-closed') grants.end(({ to }) => to.kind === 'glance' && to.mound === mound && to.session === said.session);
    });
    if (secured !== null) speakTls(http, secured);
    await listen(http, port, host);
    const address = addressHere(http, host);
    diary.info({ address, dataFolder, log: log.id }, 'listening');
    return {
      address,
      port: (http.address() as AddressInfo).port,
      tokenFile: access.devices.file,
      exposed: exposed(listening, (http.address() as AddressInfo).port),
      close: once(async () => {
        door.close();
        presence.close();
        const closed = screens.close();
        http.closeAllConnections();
        await closed;
        imports.close();
        ledgers.close();
        log.close();
        diary.info('stopped');
      }),
    };
  } catch (error) {
    log.close();
    throw error;
  }
}

function writeReading(diary: Logger, so: ReadAnew): void {
  if (so.kind === 'reading') diary.info({ facts: so.facts, of: so.of }, 'reading the records anew');
  else diary.info({ facts: so.facts, mounds: so.mounds, tookMs: so.tookMs }, 'the records are read');
}

function securedBy({ tls, host, dataFolder }: ServerOptions, { nowMs }: Clock): Promise<Secured | null> | Secured | null {
  if (tls === undefined) return null;
  return tls === 'self-made' ? selfMade({ dataFolder, hosts: hostsOf(host), nowMs, newSerial: newSecret }) : givenCertificate(tls.certFile, tls.keyFile, nowMs());
}

/** Devices come in at /device; socket.io looks after its own path. */
function upgrade(request: IncomingMessage, socket: Duplex, head: Buffer, listening: Listening, toDevices: (request: IncomingMessage, socket: Duplex, head: Buffer) => void): void {
  const { pathname } = new URL(request.url ?? '/', 'http://any');
  if (pathname.startsWith('/socket.io/')) return;
  if (turnedAway(request, listening) !== null) return void socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n');
  if (pathname !== '/device') return void socket.end('HTTP/1.1 404 Not Found\r\nConnection: close\r\n\r\n');
  toDevices(request, socket, head);
}

function once(act: () => Promise<void>): () => Promise<void> {
  let acted: Promise<void> | null = null;
  return () => (acted ??= act());
}
