import { isIPv4 } from 'node:net';

/** Whether an address, or the name to listen on, is one that only this machine can reach. */
export function isLoopback(host: string): boolean {
  const plain = host.replace(/^\[|\]$/g, '').replace(/^::ffff:/i, '').toLowerCase();
  return plain === 'localhost' || plain === '::1' || (isIPv4(plain) && plain.startsWith('127.'));
}
