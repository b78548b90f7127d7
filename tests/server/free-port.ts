import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';

/** A port that nobody listens on: for a program that must be told one, or comes back to it after it was killed. */
export async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
