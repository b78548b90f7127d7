import type { IncomingHttpHeaders } from 'node:http';
import { isIP } from 'node:net';

/**
 * Whether a request was made to us by name and, when a page made it, by a page of ours: null, or why not.
 * Browsers let every page on the web open sockets to this machine and post to it; they tell the page's origin.
 * A foreign page can also give its own name the address of this machine, so only names that nobody else can
 * own are answered to: addresses, localhost, and the host that the server was told to listen on.
 */
export function foreignness({ host, origin }: IncomingHttpHeaders, listenHost: string): string | null {
  const name = host === undefined ? null : hostName(`http://${host}`);
  if (name === null || !isOurs(name, listenHost)) return 'This server answers only under its own address; open the address that it printed.';
  if (origin !== undefined && originHost(origin) !== host) return 'Pages of other sites may not connect to this server.';
  return null;
}

function isOurs(name: string, listenHost: string): boolean {
  return name === 'localhost' || name === listenHost.toLowerCase() || isIP(name.replace(/^\[|\]$/g, '')) !== 0;
}

function hostName(address: string): string | null {
  return URL.canParse(address) ? new URL(address).hostname : null;
}

function originHost(origin: string): string | null {
  return URL.canParse(origin) ? new URL(origin).host : null;
}
