import { createServer } from 'node:net';
import { Trouble } from '../prepare/trouble.mjs';

/**
 * Finds out before anything is installed or built whether the server will be able to listen.
 * @param {number} port
 * @param {string} host
 * @throws {Trouble} with a sentence when it will not
 */
export async function demandFreePort(port, host) {
  const code = await listenOnce(port, host);
  if (code === null) return;
  if (code === 'EADDRINUSE') throw new Trouble(`Port ${port} on ${host} is taken by another program; stop that one or give another port with --port.`);
  if (code === 'EACCES') throw new Trouble(`Port ${port} on ${host} may not be used by this account; give a port from 1024 up with --port.`);
  throw new Trouble(`Nothing can listen on port ${port} of ${host} (${code}); give another --port or --host.`);
}

function listenOnce(port, host) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) => resolve(error.code ?? error.message));
    probe.listen({ port, host, exclusive: true }, () => probe.close(() => resolve(null)));
  });
}
