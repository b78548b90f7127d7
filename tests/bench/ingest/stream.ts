import { once } from 'node:events';
import { WebSocket } from 'ws';
import { hello } from '../../server/frames.ts';

/** What a device on the bench throws: the same text every time but for the number. */
export interface Thrown {
  readonly devices: number;
  /** Throws that a device sends before the first is acknowledged. */
  readonly window: number;
  /** Of each device, before the clock runs and while it does. */
  readonly warmUp: number;
  readonly measured: number;
  /** A body as JSON. */
  readonly body: string;
}

export interface Streamed {
  readonly perSecond: number;
  /** From the moment a frame is handed over until its acknowledgement is read. */
  readonly p99Ms: number;
}

export const moundOf = (device: number): string => `mound-${device + 1}`;

/** Streams throws of many devices at a server and waits for every acknowledgement. */
export async function stream(address: string, token: string, { devices, window, warmUp, measured, body }: Thrown, warm: () => Promise<void> = async () => {}): Promise<Streamed> {
  const lines = await Promise.all(Array.from({ length: devices }, (_, index) => Line.open(address, token, index, body)));
  await Promise.all(lines.map((line) => line.send(warmUp, window)));
  await warm();
  for (const line of lines) line.tookMs.length = 0;
  const startedMs = performance.now();
  await Promise.all(lines.map((line) => line.send(measured, window)));
  const seconds = (performance.now() - startedMs) / 1000;
  for (const line of lines) line.close();
  const tookMs = lines.flatMap((line) => line.tookMs).sort((a, b) => a - b);
  return { perSecond: (devices * measured) / seconds, p99Ms: tookMs[Math.floor(0.99 * tookMs.length)]! };
}

/** A device that was let in. */
export async function welcomed(address: string, token: string, index: number): Promise<WebSocket> {
  const socket = new WebSocket(`${address.replace(/^http/, 'ws')}/device`, { perMessageDeflate: false });
  await once(socket, 'open');
  socket.send(JSON.stringify(hello(token, { device: `eye-${index + 1}`, mound: moundOf(index) })));
  const [welcome] = (await once(socket, 'message')) as [Buffer];
  if (!welcome.includes('"welcome"')) throw new Error(welcome.toString());
  return socket;
}

export function frameOf(sequence: number, body: string): string {
  return `{"kind":"throw","sequence":${sequence},"time":${1000 * sequence},"body":${body}}`;
}

/** One device: sends a window of throws, then one more for each that is acknowledged. */
class Line {
  readonly tookMs: number[] = [];
  #sent = 0;
  #acknowledged = 0;
  #last = 0;
  #done = (): void => {};
  #broken: (error: Error) => void = () => {};
  readonly #sentAtMs = new Map<number, number>();
  readonly #socket: WebSocket;
  readonly #body: string;

  private constructor(socket: WebSocket, body: string) {
    this.#socket = socket;
    this.#body = body;
    socket.on('message', (data: Buffer) => this.#take(data.toString('latin1')));
  }

  static async open(address: string, token: string, index: number, body: string): Promise<Line> {
    return new Line(await welcomed(address, token, index), body);
  }

  send(throws: number, window: number): Promise<void> {
    this.#last = this.#sent + throws;
    return new Promise((resolve, reject) => {
      this.#done = resolve;
      this.#broken = reject;
      for (let ahead = 0; ahead < Math.min(window, throws); ahead += 1) this.#next();
    });
  }

  close(): void {
    this.#socket.terminate();
  }

  #next(): void {
    const sequence = (this.#sent += 1);
    this.#sentAtMs.set(sequence, performance.now());
    this.#socket.send(frameOf(sequence, this.#body));
  }

  #take(text: string): void {
    const sequence = Number(/^\{"kind":"stored","sequence":(\d+)\}$/.exec(text)?.[1]);
    const sentAtMs = this.#sentAtMs.get(sequence);
    if (sentAtMs === undefined) return this.#broken(new Error(`Not the acknowledgement of a throw on its way: ${text}`));
    this.#sentAtMs.delete(sequence);
    this.tookMs.push(performance.now() - sentAtMs);
    if (this.#sent < this.#last) this.#next();
    if ((this.#acknowledged += 1) === this.#last) this.#done();
  }
}
