import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import type { Logger } from 'pino';
import { WebSocketServer, type RawData, type WebSocket } from 'ws';
import { LARGEST_FRAME_BYTES, type Hello } from '../../core/facts/frames.ts';
import type { DeviceTokens, Welcome } from '../access/device-tokens.ts';
import type { Clock } from '../clock.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { Metrics } from '../metrics.ts';
import { PerAddress } from '../per-address.ts';
import { Silence } from '../silence.ts';
import { Connection, type DoorSide } from './connection.ts';
import { Floods, SLOWED_MS } from './floods.ts';
import { moundsTaken } from './mounds-taken.ts';
import type { Presence } from './presence.ts';
import type { StageHere } from './stage-of.ts';
import { wireOver } from './wire.ts';

/** A frame up to here is refused and the connection lives; a larger one ends it, because it is not even read. */
export const LARGEST_READ_BYTES = 16 * LARGEST_FRAME_BYTES;
/** Connections from one address that may stand open without a hello. A hall full of devices that come back at once says it within moments. */
const MOST_STRANGERS_OF_ONE_ADDRESS = 256;
export const HELLO_WITHIN_MS = 10_000;
/** A connection without a frame for this long is taken for dead; its device is stale long before. */
export const SILENT_FOR_MS = 60_000;
/** For a device to say goodbye when its connection is ended. */
const FAREWELL_MS = 500;

/** The device on its mound, whichever connection it has. */
function nameOf({ mound, device }: Pick<Hello, 'mound' | 'device'>): string {
  return `${mound} ${device}`;
}

export interface DeviceDoor {
  /** Takes over a request for the WebSocket at /device. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  /** Closes the line of every device whose token was ended. */
  look(): void;
  close(): void;
}

export interface DoorParts {
  readonly log: FactLog;
  readonly clock: Clock;
  readonly presence: Presence;
  readonly metrics: Pick<Metrics, 'frameCame' | 'refused' | 'slowed' | 'count'>;
  readonly diary: Pick<Logger, 'info'>;
  entryFor: DeviceTokens['entryFor'];
  stageOf(mound: string, place: number | null): StageHere | null;
  onTrouble(error: unknown): void;
}

export function openDoor({ log, clock, presence, metrics, diary, entryFor, stageOf, onTrouble }: DoorParts): DeviceDoor {
  const server = new WebSocketServer({ noServer: true, maxPayload: LARGEST_READ_BYTES, perMessageDeflate: false, clientTracking: true });
  const taken = moundsTaken(presence);
  const entered = new Map<WebSocket, Welcome>();
  const floods = new Floods(clock.nowMs);
  const strangers = new PerAddress();
  metrics.count('device', () => entered.size);

  server.on('connection', (socket: WebSocket, { socket: stream }: IncomingMessage) => {
    const wire = wireOver(socket, stream);
    const address = stream.remoteAddress ?? '';
    const isKnown = strangers.came(address);
    let readOn: (() => void) | null = null;
    const slow = (): void => {
      if (readOn !== null) return;
      metrics.slowed('device');
      wire.pause('flood');
      readOn = clock.after(SLOWED_MS, () => {
        readOn = null;
        wire.resume('flood');
      });
    };
    const side: DoorSide = {
      log, stageOf,
      unknown(hello) {
        const entry = entryFor(hello, stream);
        if (entry.kind === 'refused') return entry.sentence;
        entered.set(socket, entry);
        return null;
      },
      reaches: (mound) => entered.get(socket)?.reaches(mound) ?? false,
      admit(hello) {
        const busy = taken.admit(hello, wire);
        if (busy === null) diary.info({ mound: hello.mound, device: hello.device }, 'a device came');
        return busy;
      },
      heard: ({ mound, device }) => presence.heard(mound, device),
      frameCame: metrics.frameCame,
      refused: (code) => metrics.refused('device', code),
      forNothing(hello, bytes) {
        const standing = floods.forNothing(hello === null ? address : nameOf(hello), bytes, hello !== null);
        if (standing === 'slowed') slow();
        if (standing === 'kept-off') {
          diary.info({ mound: hello!.mound, device: hello!.device }, 'a device was kept off for flooding');
          // It may go on sending without ever reading that it is closed.
          clock.after(FAREWELL_MS, () => socket.terminate());
        }
        return standing;
      },
      isKeptOff: (hello) => floods.isKeptOff(nameOf(hello)),
    };
    const connection = new Connection(wire, side);
    const callOff = clock.after(HELLO_WITHIN_MS, () => wire.close(1008, 'no hello'));
    let silence: Silence | null = null;
    socket.on('message', (data: RawData, isBinary) => {
      // Another connection of the device has taken over: what still comes here is not answered, so it comes again there.
      if (socket.readyState !== socket.OPEN) return;
      connection.receive(data as Buffer, isBinary).catch(onTrouble);
      if (connection.hello === null) return;
      if (silence !== null) return silence.heard();
      isKnown();
      callOff();
      silence = new Silence(clock, SILENT_FOR_MS, () => socket.terminate());
    });
    // A frame beyond maxPayload or broken framing: ws closes with its own code.
    socket.on('error', () => {});
    socket.on('close', (code) => {
      if (connection.hello !== null) diary.info({ mound: connection.hello.mound, device: connection.hello.device, code }, 'a device left');
      callOff();
      silence?.end();
      readOn?.();
      isKnown();
      taken.leave(wire);
      entered.delete(socket);
    });
  });

  return {
    upgrade(request, socket, head) {
      if (strangers.of(request.socket.remoteAddress ?? '') >= MOST_STRANGERS_OF_ONE_ADDRESS) return void socket.end('HTTP/1.1 503 Service Unavailable\r\nRetry-After: 10\r\nConnection: close\r\n\r\n');
      server.handleUpgrade(request, socket, head, (opened) => server.emit('connection', opened, request));
    },
    look() {
      for (const [socket, { holds }] of entered) if (!holds()) socket.close(1008, 'the token was ended');
    },
    close() {
      for (const socket of server.clients) socket.close(1001, 'the server is stopping');
      setTimeout(() => server.clients.forEach((socket) => socket.terminate()), FAREWELL_MS).unref();
      server.close();
    },
  };
}
