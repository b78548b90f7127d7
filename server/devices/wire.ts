import type { Duplex } from 'node:stream';
import type { WebSocket } from 'ws';
import type { ServerFrame } from '../../core/facts/frames.ts';

/** Answers that a device does not fetch. */
const MOST_UNREAD_BYTES = 1024 * 1024;

/** Why a device is read no further for now: what it sent has to be written first, or it sends what brings nothing. */
type Hold = 'disk' | 'flood';

/** What a connection needs of the socket under it. */
export interface Wire {
  send(frame: ServerFrame): void;
  close(code: number, reason: string): void;
  pause(why: Hold): void;
  /** Reads on once nothing holds it any more. */
  resume(why: Hold): void;
}

/** What is answered in one turn, such as all throws of one commit, leaves in one piece. */
export function wireOver(socket: WebSocket, stream: Duplex): Wire {
  const leave = (): void => stream.uncork();
  const holds = new Set<Hold>();
  return {
    send(frame) {
      if (socket.readyState !== socket.OPEN) return;
      if (socket.bufferedAmount > MOST_UNREAD_BYTES) return socket.terminate();
      if (stream.writableCorked === 0) {
        stream.cork();
        process.nextTick(leave);
      }
      socket.send(JSON.stringify(frame));
    },
    close: (code, reason) => socket.close(code, reason),
    pause(why) {
      holds.add(why);
      socket.pause();
    },
    resume(why) {
      holds.delete(why);
      if (holds.size === 0) socket.resume();
    },
  };
}
