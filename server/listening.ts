import { createServer, type RequestListener, type Server, type ServerOptions } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import { inAddress } from './access/addresses.ts';
import type { Secured } from './access/certificate.ts';
import { StartFailure } from './start-failure.ts';

/** First byte of a TLS handshake, RFC 8446, section 5.1. */
const HANDSHAKE = 22;
const FIRST_BYTE_WITHIN_MS = 10_000;

/** A request that comes in drops, or never, holds its connection no longer than this. */
const WAITS = { headersTimeout: 10_000, requestTimeout: 30_000, connectionsCheckingInterval: 5_000 };

/** The server for everything over HTTP: it waits for nobody for ever. */
export function httpServer(app: RequestListener, waits: Pick<ServerOptions, keyof typeof WAITS> = WAITS): Server {
  return createServer(waits, app);
}

/** Lets a server that listens speak TLS and plain HTTP on one port: who types the address without https is not met by silence. */
export function speakTls(http: Server, { key, cert }: Secured): void {
  const serve = http.listeners('connection') as ((socket: Socket) => void)[];
  const tls = createTlsServer({ key, cert, minVersion: 'TLSv1.2', handshakeTimeout: FIRST_BYTE_WITHIN_MS }, (socket) => serve.forEach((take) => take.call(http, socket)));
  http.removeAllListeners('connection');
  http.on('connection', (socket: Socket) => {
    const hangUp = (): void => void socket.destroy();
    socket.on('error', hangUp);
    socket.setTimeout(FIRST_BYTE_WITHIN_MS, hangUp);
    socket.once('data', (first: Buffer) => {
      socket.setTimeout(0).off('timeout', hangUp).off('error', hangUp).pause();
      socket.unshift(first);
      if (first[0] === HANDSHAKE) tls.emit('connection', socket);
      else serve.forEach((take) => take.call(http, socket));
      process.nextTick(() => socket.resume());
    });
  });
  tls.on('tlsClientError', (_, socket) => void socket.destroy());
}

/** @throws {StartFailure} when the port cannot be had */
export function listen(http: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    http.once('error', (error: NodeJS.ErrnoException) => reject(new StartFailure(whyNotListening(error, port, host))));
    http.listen({ port, host, exclusive: true }, resolve);
  });
}

/** In one sentence; `option` is the one that gives the port. */
export function whyNotListening({ code, message }: NodeJS.ErrnoException, port: number, host: string, option = '--port'): string {
  switch (code) {
    case 'EADDRINUSE': return `Port ${port} on ${host} is taken by another program; stop that one or give another port with ${option}.`;
    case 'EACCES': return `Port ${port} on ${host} may not be used by this account; give a port from 1024 up with ${option}.`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND': return `${host} is no address of this machine; give another one with --host.`;
    default: return `Nothing can listen on port ${port} of ${host} (${message}); give another ${option} or --host.`;
  }
}

/** As this machine itself reaches a server: over plain HTTP, which nobody else can listen to. */
export function addressHere(http: Server, host: string): string {
  const { port } = http.address() as AddressInfo;
  const here = host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '::1' : host;
  return `http://${inAddress(here)}:${port}`;
}
