import type { IncomingMessage } from 'node:http';
import type { Listening } from './addresses.ts';
import { isEncrypted } from './cookies.ts';
import { isFromHere } from './loopback.ts';
import { foreignness } from './origin.ts';

/** Whether a request came unencrypted although the server encrypts. From this machine it may: nobody listens in between. */
export function cameInTheOpen({ socket }: Pick<IncomingMessage, 'socket'>, { tls }: Listening): boolean {
  return tls && !isEncrypted(socket) && !isFromHere(socket);
}

/** Why a WebSocket, or a request of a screen's line, is turned away before anything of it is read; null when it is not. */
export function turnedAway(request: IncomingMessage, listening: Listening): string | null {
  return cameInTheOpen(request, listening) ? 'This server is reached over TLS only; use https and wss.' : foreignness(request, listening.host);
}
