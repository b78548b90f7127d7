import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { createServer as createHttp, type IncomingMessage } from 'node:http';
import { onTestFinished } from 'vitest';
import { WebSocket, WebSocketServer, type RawData } from 'ws';
import type { Random } from '../../../simulators/random.ts';

/** What can happen to a frame; one in so many. */
const ONE_IN = { cut: 60, duplicate: 10, delay: 8, reorder: 8 } as const;
const LONGEST_DELAY_MS = 15;

export type Fault = keyof typeof ONE_IN;

export interface FaultProxy {
  readonly address: string;
  /** How often each happened so far. */
  readonly happened: Record<Fault, number>;
  /** From now on every frame passes. */
  calm(): void;
}

/** Stands between WebSocket clients and a server, and does to their frames, in both directions, what bad air does and worse. */
export async function faultProxy(server: string, random: Random, mayFail: (text: string) => boolean = () => true): Promise<FaultProxy> {
  const happened = { cut: 0, duplicate: 0, delay: 0, reorder: 0 };
  let calm = false;
  const faultOf = (text: string): Fault | null => {
    if (calm || !mayFail(text)) return null;
    const fault = (Object.keys(ONE_IN) as Fault[]).find((one) => random.uniform() < 1 / ONE_IN[one]) ?? null;
    if (fault !== null) happened[fault] += 1;
    return fault;
  };
  const door = new WebSocketServer({ noServer: true });
  const http = createHttp((_, response) => response.writeHead(404).end());
  http.on('upgrade', (request: IncomingMessage, socket, head) => door.handleUpgrade(request, socket, head, (near) => {
    const far = new WebSocket(`${server.replace(/^http/, 'ws')}${request.url}`);
    const cut = (): void => [near, far].forEach((one) => one.terminate());
    const up = new Lane(far, faultOf, cut, random);
    const down = new Lane(near, faultOf, cut, random);
    near.on('message', (data: RawData) => up.take(String(data)));
    far.on('message', (data: RawData) => down.take(String(data)));
    far.on('open', () => up.open());
    down.open();
    for (const [one, other] of [[near, far], [far, near]] as const) {
      one.on('error', () => {});
      one.on('close', () => other.terminate());
    }
  }));
  http.listen(0, '127.0.0.1');
  await once(http, 'listening');
  onTestFinished(() => {
    for (const client of door.clients) client.terminate();
    http.close();
  });
  return { address: `http://127.0.0.1:${(http.address() as AddressInfo).port}`, happened, calm() { calm = true; } };
}

/** One direction of one connection. */
class Lane {
  #queue: { readonly text: string; readonly afterMs: number }[] = [];
  #held: string | null = null;
  #flowing = false;
  readonly #to: WebSocket;
  readonly #faultOf: (text: string) => Fault | null;
  readonly #cut: () => void;
  readonly #random: Random;

  constructor(to: WebSocket, faultOf: (text: string) => Fault | null, cut: () => void, random: Random) {
    this.#to = to;
    this.#faultOf = faultOf;
    this.#cut = cut;
    this.#random = random;
  }

  open(): void {
    this.#flowing = true;
    this.#flow();
  }

  take(text: string): void {
    switch (this.#faultOf(text)) {
      case 'cut': return this.#cut();
      case 'duplicate': this.#pass(text); return this.#pass(text);
      case 'delay': return this.#pass(text, LONGEST_DELAY_MS * this.#random.uniform());
      case 'reorder': return this.#hold(text);
      case null: return this.#pass(text);
    }
  }

  /** Waits for the next frame and goes behind it; where none comes, by itself a little later. */
  #hold(text: string): void {
    if (this.#held !== null) return this.#pass(text);
    this.#held = text;
    setTimeout(() => this.#release(), LONGEST_DELAY_MS);
  }

  #release(): void {
    const text = this.#held;
    this.#held = null;
    if (text !== null) this.#queue.push({ text, afterMs: 0 });
    this.#flow();
  }

  #pass(text: string, afterMs = 0): void {
    this.#queue.push({ text, afterMs });
    this.#release();
  }

  #flow(): void {
    while (this.#flowing) {
      const next = this.#queue.shift();
      if (next === undefined) return;
      if (next.afterMs === 0) this.#send(next.text);
      else {
        this.#flowing = false;
        setTimeout(() => {
          this.#send(next.text);
          this.open();
        }, next.afterMs);
      }
    }
  }

  #send(text: string): void {
    if (this.#to.readyState === this.#to.OPEN) this.#to.send(text);
  }
}
