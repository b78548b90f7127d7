import { WebSocket } from 'ws';
import { serverFrameSchema, type ServerFrame } from '../core/facts/frames.ts';

/** What came next on a line. */
export type Heard =
  | { readonly kind: 'frame'; readonly frame: ServerFrame }
  | { readonly kind: 'not-a-frame'; readonly text: string }
  | { readonly kind: 'closed'; readonly code: number }
  | { readonly kind: 'silence' };

/** A device's side of one WebSocket, heard frame by frame. */
export class Line {
  readonly #socket: WebSocket;
  readonly #waitMs: number;
  readonly #heard: Heard[] = [];
  #waiting: ((heard: Heard) => void) | null = null;

  private constructor(socket: WebSocket, waitMs: number) {
    this.#socket = socket;
    this.#waitMs = waitMs;
    socket.on('message', (data) => this.#hear(asFrame(String(data))));
    socket.on('close', (code) => this.#hear({ kind: 'closed', code }));
  }

  /** @throws when nobody opens at the address within the time */
  static open(url: string, waitMs: number): Promise<Line> {
    return new Promise((resolve, reject) => {
      const socket = new WebSocket(url, { handshakeTimeout: waitMs });
      const line = new Line(socket, waitMs);
      socket.once('open', () => resolve(line));
      socket.on('error', reject);
    });
  }

  say(frame: object): void {
    this.sayText(JSON.stringify(frame));
  }

  sayText(text: string): void {
    this.#socket.send(text);
  }

  sayBinary(bytes: Buffer): void {
    this.#socket.send(bytes, { binary: true });
  }

  next(): Promise<Heard> {
    const heard = this.#heard.shift();
    if (heard !== undefined) return Promise.resolve(heard);
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.#hear({ kind: 'silence' }), this.#waitMs);
      this.#waiting = (found) => {
        clearTimeout(timer);
        this.#waiting = null;
        resolve(found);
      };
    });
  }

  close(): Promise<void> {
    if (this.#socket.readyState === WebSocket.CLOSED) return Promise.resolve();
    return new Promise((resolve) => {
      this.#socket.once('close', () => resolve());
      this.#socket.close(1000);
    });
  }

  #hear(heard: Heard): void {
    if (this.#waiting === null) this.#heard.push(heard);
    else this.#waiting(heard);
  }
}

function asFrame(text: string): Heard {
  try {
    const frame = serverFrameSchema.safeParse(JSON.parse(text));
    return frame.success ? { kind: 'frame', frame: frame.data } : { kind: 'not-a-frame', text };
  } catch {
    return { kind: 'not-a-frame', text };
  }
}

/** What was heard, in words, for a report. */
export function inWords(heard: Heard): string {
  switch (heard.kind) {
    case 'frame': return JSON.stringify(heard.frame);
    case 'not-a-frame': return `something that is no frame of the protocol: ${heard.text.slice(0, 120)}`;
    case 'closed': return `the connection was closed with code ${heard.code}`;
    case 'silence': return 'nothing at all';
  }
}
