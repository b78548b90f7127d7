import { once } from 'node:events';
import { WebSocket, type ClientOptions } from 'ws';
import { serverFrameSchema, type Hello, type ServerFrame } from '../../core/facts/frames.ts';
import { hello } from './frames.ts';

/** A device made of a plain WebSocket: what it gets is checked against the documented schema and waits in order. */
export class DeviceClient {
  readonly socket: WebSocket;
  readonly closed: Promise<number>;
  #frames: ServerFrame[] = [];
  #waiting: ((frame: ServerFrame) => void)[] = [];

  private constructor(socket: WebSocket) {
    this.socket = socket;
    this.closed = new Promise((resolve) => socket.on('close', resolve));
    socket.on('error', () => {});
    socket.on('message', (data: Buffer) => {
      const frame = serverFrameSchema.parse(JSON.parse(data.toString('utf8')));
      const waiting = this.#waiting.shift();
      if (waiting === undefined) this.#frames.push(frame);
      else waiting(frame);
    });
  }

  static async connect(address: string, options: ClientOptions = {}): Promise<DeviceClient> {
    const client = new DeviceClient(new WebSocket(`${address.replace(/^http/, 'ws')}/device`, options));
    await once(client.socket, 'open');
    return client;
  }

  /** Connects and says hello. */
  static async greet(address: string, token: string, more: Partial<Hello> = {}): Promise<{ client: DeviceClient; welcome: ServerFrame }> {
    const client = await DeviceClient.connect(address);
    return { client, welcome: await client.ask(hello(token, more)) };
  }

  send(frame: unknown): void {
    this.socket.send(typeof frame === 'string' ? frame : JSON.stringify(frame));
  }

  next(): Promise<ServerFrame> {
    const frame = this.#frames.shift();
    return frame === undefined ? new Promise((resolve) => this.#waiting.push(resolve)) : Promise.resolve(frame);
  }

  async ask(frame: unknown): Promise<ServerFrame> {
    this.send(frame);
    return this.next();
  }

  async leave(): Promise<void> {
    this.socket.close();
    await this.closed;
  }
}
