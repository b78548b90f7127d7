import { isIPv4 } from 'node:net';

/** Whether an address, or the name to listen on, is one that only this machine can reach. */
export function isLoopback(host: string): boolean {
  const plain = host.replace(/^\[|\]$/g, '').replace(/^::ffff:/i, '').toLowerCase();
  return plain === 'localhost' || plain === '::1' || (isIPv4(plain) && plain.startsWith('127.'));
}

/** The two ends of a connection, as the kernel tells them. */
export interface Connected {
  readonly remoteAddress?: string | undefined;
  readonly localAddress?: string | undefined;
}

/** Whether the other end is a program on this machine: it came over loopback, or from the very address that it went to. */
export function isFromHere({ remoteAddress, localAddress }: Connected): boolean {
  return remoteAddress !== undefined && (isLoopback(remoteAddress) || remoteAddress === localAddress);
}
