import type { IncomingMessage } from 'node:http';
import { hostname, networkInterfaces } from 'node:os';
import type { Authority } from './authority.ts';
import { isLoopback } from './loopback.ts';

/** How the server listens, as far as others have to find it. */
export interface Listening {
  readonly host: string;
  readonly tls: boolean;
  /** What phones have to accept once, where the certificate was made here. */
  readonly authority: Authority | null;
}

/** Where a phone in the building finds the server, such as http://192.168.4.20:8080. `this-machine`: it does not, no other machine can. */
export interface PhoneAddress {
  readonly address: string;
  readonly reach: 'network' | 'this-machine';
}

/** The address that the asking browser itself used is best: it works. From this machine's own name for itself a phone gets nowhere. */
export function addressForPhones({ headers, socket }: IncomingMessage, { host, tls }: Listening): PhoneAddress {
  const scheme = tls ? 'https' : 'http';
  const used = headers.host ?? '';
  if (isLoopback(host)) return { address: `${scheme}://${used}`, reach: 'this-machine' };
  const name = used.replace(/:\d+$/, '');
  return { address: `${scheme}://${isLoopback(name) ? `${inAddress(reachableHosts(host)[0]!)}:${socket.localPort}` : used}`, reach: 'network' };
}

/** The addresses and names under which others reach a server that listens on this host, the likeliest first. */
function reachableHosts(listenHost: string): string[] {
  if (listenHost !== '0.0.0.0' && listenHost !== '::') return [listenHost];
  const own = Object.values(networkInterfaces()).flatMap((all) => (all ?? []).flatMap(({ family, internal, address }) => (family === 'IPv4' && !internal ? [address] : [])));
  return [...own, hostname()];
}

/** All addresses and names of this machine that a certificate has to be good for, those that others use first. */
export function hostsOf(listenHost: string): string[] {
  const machine = hostname().toLowerCase();
  return [...new Set([...reachableHosts(listenHost), machine, `${machine}.local`, 'localhost', '127.0.0.1'])];
}

/** What other machines can reach, for whoever starts the server. */
export interface Exposed {
  readonly addresses: readonly string[];
  readonly encrypted: boolean;
  /** Of the authority that phones have to accept. */
  readonly fingerprint: string | null;
}

/** Null where only this machine reaches the server. */
export function exposed({ host, tls, authority }: Listening, port: number): Exposed | null {
  if (isLoopback(host)) return null;
  const addresses = reachableHosts(host).map((one) => `${tls ? 'https' : 'http'}://${inAddress(one)}:${port}`);
  return { addresses, encrypted: tls, fingerprint: authority?.fingerprint ?? null };
}

export function inAddress(host: string): string {
  return host.includes(':') ? `[${host}]` : host;
}
