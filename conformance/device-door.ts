import type { AddressInfo } from 'node:net';
import { WebSocketServer, type WebSocket } from 'ws';
import type { ServerFrame } from '../core/facts/frames.ts';

/** What a device did, in the order in which it did it. */
export type Deed =
  | { readonly kind: 'connected' }
  | { readonly kind: 'said'; readonly text: string; readonly isBinary: boolean }
  | { readonly kind: 'left' };

/** A door at which one device is awaited; of several connections the newest counts. */
export interface DeviceDoor {
  readonly port: number;
  answer(frame: ServerFrame): void;
  /** Breaks the connection without a word. */
  cut(): void;
  /** Closes it with a code of the protocol. */
  dismiss(code: number, reason: string): void;
  close(): Promise<void>;
}

/** Opens on an address of this machine and the given port of it, 0 for a free one. */
export async function openDeviceDoor({ host, port }: { readonly host: string; readonly port: number }, onDeed: (deed: Deed) => void): Promise<DeviceDoor> {
  const server = new WebSocketServer({ host, port, path: '/device' });
  let newest: WebSocket | null = null;
  server.on('connection', (socket) => {
    newest = socket;
    onDeed({ kind: 'connected' });
    socket.on('message', (data, isBinary) => {
      if (socket === newest) onDeed({ kind: 'said', text: String(data), isBinary });
    });
    socket.on('close', () => {
      if (socket === newest) onDeed({ kind: 'left' });
    });
    socket.on('error', () => {});
  });
  await new Promise<void>((resolve, reject) => {
    server.once('listening', resolve);
    server.once('error', reject);
  });
  return {
    port: (server.address() as AddressInfo).port,
    answer: (frame) => newest?.send(JSON.stringify(frame)),
    cut: () => newest?.terminate(),
    dismiss: (code, reason) => newest?.close(code, reason),
    close: () => new Promise((resolve) => {
      for (const client of server.clients) client.terminate();
      server.close(() => resolve());
    }),
  };
}
