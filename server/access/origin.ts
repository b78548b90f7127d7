import type { IncomingMessage } from 'node:http';
import { isIP } from 'node:net';
import { hostname } from 'node:os';
import { isEncrypted } from './cookies.ts';

/**
 * Whether a request was made to us by name and, when a page made it, by a page of ours: null, or why not.
 * Browsers let every page on the web open sockets to this machine and post to it; they tell the page's origin.
 * A foreign page can also give its own name the address of this machine, so only names that nobody else can
 * own are answered to: addresses, localhost, the name of this machine, and the host that the server was told to listen on.
 */
export function foreignness({ headers: { host, origin }, socket }: Pick<IncomingMessage, 'headers' | 'socket'>, listenHost: string): string | null {
  const own = originOf(`${isEncrypted(socket) ? 'https' : 'http'}://${host}`);
  if (host === undefined || own === null || !isOurs(own.hostname, listenHost)) return 'This server answers only under its own address; open the address that it printed.';
  if (origin !== undefined && originOf(origin)?.origin !== own.origin) return 'Pages of other sites may not connect to this server.';
  return null;
}

function isOurs(name: string, listenHost: string): boolean {
  const machine = hostname().toLowerCase();
  return ['localhost', listenHost.toLowerCase(), machine, `${machine}.local`].includes(name) || isIP(name.replace(/^\[|\]$/g, '')) !== 0;
}

function originOf(address: string): URL | null {
  return URL.canParse(address) ? new URL(address) : null;
}
