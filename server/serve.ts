import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import type { Duplex } from 'node:stream';
import { pino } from 'pino';
import { inAddress } from './access/addresses.ts';
import { keepAccess } from './access/keep-access.ts';
import { foreignness } from './access/origin.ts';
import { httpApp } from './api/app.ts';
import { buildOf, pages } from './api/pages.ts';
import { apiRoutes } from './api/routes.ts';
import { newId } from './chance.ts';
import { systemClock, type Clock } from './clock.ts';
import { openDoor } from './devices/door.ts';
import { keepPresence } from './devices/presence.ts';
import { stageOf } from './devices/stage-of.ts';
import { followLedgers } from './ledgers.ts';
import { openSqliteLog } from './log/sqlite-log.ts';
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
  readonly clock?: Clock;
  readonly logLevel?: 'info' | 'silent';
}

export interface RunningServer {
  /** As this machine itself reaches it, such as http://127.0.0.1:8080. */
  readonly address: string;
  readonly port: number;
  /** Holds the token that devices on this machine show. */
  readonly tokenFile: string;
  close(): Promise<void>;
}

/**
 * Wires the rooms together and listens.
 * @throws {StartFailure} when the data folder or the port cannot be used; nothing is left open then
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { port, host, dataFolder, webFolder, clock = systemClock, logLevel = 'info' } = options;
  const logger = pino({ level: logLevel, base: null });
  const onTrouble = (error: unknown): void => logger.error({ err: error }, 'something failed');
  const opened = openSqliteLog({ file: path.join(dataFolder, 'facts.db'), nowMs: clock.nowMs, newId, onTrouble });
  if (opened.kind === 'failed') throw new StartFailure(opened.sentence);
  const { log, keptCopy } = opened;
  if (keptCopy !== null) logger.info({ keptCopy }, 'the log was brought to a newer format; a copy as it was is kept');
  try {
    const ledgers = followLedgers(log, onTrouble);
    const access = await keepAccess({ ...options, nowMs: clock.nowMs, isOpen: (mound, session) => ledgers.of(mound).sessions[session]?.closedAtMs === null });
    const { grants } = access;
    const presence = keepPresence(clock);
    const build = buildOf(webFolder);
    const http = createServer(httpApp({ api: apiRoutes({ ...access, log, ledgers, presence, build, listening: { host, tls: false } }), pages: pages(webFolder, access.whoAsks), listenHost: host, onTrouble }));
    const door = openDoor({ log, clock, presence, entryFor: access.devices.entryFor, stageOf: (mound, place) => stageOf(ledgers.of(mound), place), onTrouble });
    http.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => upgrade(request, socket, head, host, door.upgrade));
    const screens = serveScreens(http, { log, ledgers, presence, clock, listenHost: host, whoAsks: access.whoAsks, build, onTrouble });
    grants.onEnded(screens.look);
    grants.onEnded(door.look);
    log.onAppended(({ mound, said }) => {
      if (said.kind === 'session-closed') grants.end(({ to }) => to.kind === 'glance' && to.mound === mound && to.session === said.session);
    });
    await listen(http, port, host);
    const address = addressOf(http, host);
    logger.info({ address, dataFolder, log: log.id }, 'listening');
    return {
      address,
      port: (http.address() as AddressInfo).port,
      tokenFile: access.devices.file,
      close: once(async () => {
        door.close();
        presence.close();
        const closed = screens.close();
        http.closeAllConnections();
        await closed;
        ledgers.close();
        log.close();
        logger.info('stopped');
      }),
    };
  } catch (error) {
    log.close();
    throw error;
  }
}

/** Devices come in at /device; socket.io looks after its own path. */
function upgrade(request: IncomingMessage, socket: Duplex, head: Buffer, host: string, toDevices: (request: IncomingMessage, socket: Duplex, head: Buffer) => void): void {
  const { pathname } = new URL(request.url ?? '/', 'http://any');
  if (pathname.startsWith('/socket.io/')) return;
  if (foreignness(request, host) !== null) return void socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n');
  if (pathname !== '/device') return void socket.end('HTTP/1.1 404 Not Found\r\nConnection: close\r\n\r\n');
  toDevices(request, socket, head);
}

function listen(http: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    http.once('error', (error: NodeJS.ErrnoException) => reject(new StartFailure(whyNotListening(error, port, host))));
    http.listen({ port, host, exclusive: true }, resolve);
  });
}

function whyNotListening({ code, message }: NodeJS.ErrnoException, port: number, host: string): string {
  switch (code) {
    case 'EADDRINUSE': return `Port ${port} on ${host} is taken by another program; stop that one or give another port with --port.`;
    case 'EACCES': return `Port ${port} on ${host} may not be used by this account; give a port from 1024 up with --port.`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND': return `${host} is no address of this machine; give another one with --host.`;
    default: return `Nothing can listen on port ${port} of ${host} (${message}); give another --port or --host.`;
  }
}

function addressOf(http: Server, host: string): string {
  const { port } = http.address() as AddressInfo;
  const here = host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '::1' : host;
  return `http://${inAddress(here)}:${port}`;
}

function once(act: () => Promise<void>): () => Promise<void> {
  let acted: Promise<void> | null = null;
  return () => (acted ??= act());
}
