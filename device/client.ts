import { WebSocket } from 'ws';
import { serverFrameSchema, type DeviceFrame, type Hello, type RefusalCode, type ServerFrame } from '../core/facts/frames.ts';
import { backoffMs, type Chance } from './backoff.ts';
import type { Clock } from './clock.ts';
import { Unsettled } from './unsettled.ts';

export interface ClientOptions {
  readonly url: string;
  readonly hello: Hello;
  readonly clock: Clock;
  /** For the jitter of reconnecting. */
  readonly random: Chance;
  /** Gets every sentence that a person should read. */
  readonly print: (line: string) => void;
  /** `why` comes with a refusal. What a welcome says is settled is not told, unless `asksForAnswers`. */
  readonly onSettled?: (sequence: number, how: 'stored' | 'refused', why?: Refused) => void;
  /** Sends what a welcome settles once more, because whoever recorded it waits for the answer to it. */
  readonly asksForAnswers?: boolean;
  /** Refusals that are not final but are taken as such. */
  readonly givesUpOn?: readonly RefusalCode[];
  /** The device's own clock, where this program only passes on what a device measured. */
  readonly deviceClock?: DeviceClock;
}

interface DeviceClock {
  /** Milliseconds, as throws carry them. */
  nowMs(): number;
  /** Whether the device itself lives; heartbeats that nobody stands behind would be lies. */
  isHeard(): boolean;
}

export type Refused = Extract<ServerFrame, { kind: 'refused' }>;

export type RecordedFrame = Extract<DeviceFrame, { kind: 'throw' | 'correction' }>;

/** An answer that is this late means that nobody is there. */
export const ANSWER_WITHIN_MS = 10_000;
export const SEND_AGAIN_AFTER_MS = 3_000;
/** Refusals of a hello that saying it again cannot mend. */
const HOPELESS: readonly RefusalCode[] = ['wrong-token', 'wrong-protocol', 'malformed'];
/** The server closes with this when another connection of the same device came later. */
export const TAKEN_OVER = 4001;

/**
 * A device as the protocol wants it: hello first, heartbeats, every frame kept until it is stored or finally refused,
 * what is missing sent again after each welcome, reconnecting for ever with growing pauses.
 */
export class DeviceClient {
  readonly #options: ClientOptions;
  readonly #unsettled = new Unsettled();
  readonly #waiting: (() => void)[] = [];
  #socket: WebSocket | null = null;
  #welcomed = false;
  #silent = false;
  #failures = 0;
  #closed = false;
  #given: string | null = null;
  #callOffHeartbeat: (() => void) | null = null;
  #callOffReconnect: (() => void) | null = null;
  #callOffAnswer: (() => void) | null = null;

  constructor(options: ClientOptions) {
    this.#options = options;
    this.#connect();
  }

  /** Why this device does not try any longer; null while it does. */
  get givenUp(): string | null {
    return this.#given;
  }

  /** Between two connections: the next attempt has its time. */
  get reconnecting(): boolean {
    return this.#callOffReconnect !== null;
  }

  get unsettledCount(): number {
    return this.#unsettled.count;
  }

  /** Keeps a frame and sends it as soon as that is possible. */
  record(frame: RecordedFrame): void {
    const text = JSON.stringify(frame);
    this.#unsettled.keep(frame.sequence, text);
    if (this.#welcomed) this.#send(text);
  }

  /** Sends a frame that is still kept once more, as a device does that missed the answer. */
  repeat(sequence: number): void {
    const text = this.#unsettled.textOf(sequence);
    if (this.#welcomed && text !== undefined) this.#send(text);
  }

  /** Breaks the connection without a word; the client comes back by itself. */
  drop(): void {
    this.#socket?.terminate();
  }

  /** Neither heartbeat nor throw for so long, with the connection open; then everything that was kept. */
  fallSilent(forMs: number): void {
    if (this.#silent) return;
    this.#silent = true;
    this.#options.clock.after(forMs, () => {
      this.#silent = false;
      if (this.#welcomed) this.#sendAll(this.#unsettled.texts());
    });
  }

  /** Resolves when nothing is kept any longer, or the client gave up or was closed. */
  settled(): Promise<void> {
    if (this.#unsettled.count === 0 || this.#closed || this.#given !== null) return Promise.resolve();
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  close(): void {
    this.#closed = true;
    this.#welcomed = false;
    this.#stopTimers();
    this.#socket?.close(1000, 'the device is switched off');
    this.#tellWaiting();
  }

  #connect(): void {
    const socket = new WebSocket(this.#options.url);
    this.#socket = socket;
    socket.on('open', () => socket.send(JSON.stringify(this.#options.hello)));
    socket.on('message', (data) => this.#hear(String(data)));
    socket.on('error', (error) => {
      if (this.#failures === 0 && !this.#closed) this.#options.print(`device: no connection (${error.message}); trying again`);
    });
    socket.on('close', (code) => this.#onClose(code));
  }

  #onClose(code: number): void {
    const wasWelcomed = this.#welcomed;
    this.#welcomed = false;
    this.#stopTimers();
    if (code === TAKEN_OVER) return this.#giveUp('Another connection of the same device has taken over; stop one of the two.');
    if (this.#closed || this.#given !== null) return;
    if (wasWelcomed) this.#options.print('device: the connection broke; trying again');
    this.#failures += 1;
    this.#callOffReconnect = this.#options.clock.after(backoffMs(this.#failures, this.#options.random), () => {
      this.#callOffReconnect = null;
      this.#connect();
    });
  }

  #hear(text: string): void {
    const frame = readServerFrame(text);
    if (frame === null) return this.#options.print(`device: the server sent something that is not in the protocol: ${text.slice(0, 80)}`);
    switch (frame.kind) {
      case 'welcome':
        return this.#onWelcome(frame);
      case 'stored':
        return this.#settle(frame.sequence, 'stored');
      case 'refused':
        return this.#onRefused(frame);
    }
  }

  #onWelcome(welcome: Extract<ServerFrame, { kind: 'welcome' }>): void {
    const isBack = this.#failures > 0;
    if (isBack) this.#options.print('device: connected again');
    this.#failures = 0;
    this.#welcomed = true;
    this.#heartbeats(welcome.heartbeatSeconds);
    const before = this.#unsettled.count;
    const again = this.#options.asksForAnswers === true ? this.#unsettled.texts() : this.#unsettled.after(welcome);
    if (isBack && before > 0 && again.length > 0) this.#options.print(`device: sends ${again.length} again that the server does not have`);
    this.#sendAll(again);
    this.#tellIfSettled();
  }

  #onRefused(refused: Refused): void {
    const { sequence, code, path, sentence } = refused;
    const final = refused.final || (this.#options.givesUpOn?.includes(code) ?? false);
    this.#options.print(`device: refused${sequence === null ? '' : ` throw ${sequence}`} (${code}${path === '' ? '' : ` at ${path}`}): ${sentence}`);
    if (sequence !== null && final) return this.#settle(sequence, 'refused', refused);
    if (sequence !== null) {
      this.#options.clock.after(SEND_AGAIN_AFTER_MS, () => this.repeat(sequence));
      return undefined;
    }
    if (this.#welcomed) return undefined;
    return HOPELESS.includes(code) ? this.#giveUp(sentence) : this.drop();
  }

  #giveUp(sentence: string): void {
    this.#given = sentence;
    this.#stopTimers();
    this.#socket?.close();
    this.#tellWaiting();
  }

  #settle(sequence: number, how: 'stored' | 'refused', why?: Refused): void {
    if (this.#unsettled.textOf(sequence) === undefined) return;
    this.#unsettled.forget(sequence);
    this.#callOffAnswer?.();
    this.#callOffAnswer = null;
    if (this.#unsettled.count > 0) this.#expectAnswer();
    this.#options.onSettled?.(sequence, how, why);
    this.#tellIfSettled();
  }

  #send(text: string): void {
    if (this.#silent) return;
    this.#socket?.send(text);
    this.#expectAnswer();
  }

  #sendAll(texts: readonly string[]): void {
    for (const text of texts) this.#send(text);
  }

  #expectAnswer(): void {
    this.#callOffAnswer ??= this.#options.clock.after(ANSWER_WITHIN_MS, () => {
      this.#callOffAnswer = null;
      if (this.#silent) return;
      this.#options.print('device: no answer from the server; connects anew');
      this.drop();
    });
  }

  #heartbeats(everySeconds: number): void {
    const { clock, deviceClock = { nowMs: () => clock.nowMs(), isHeard: () => true } } = this.#options;
    this.#callOffHeartbeat?.();
    const beat = (lives: boolean): void => {
      if (lives && !this.#silent) this.#socket?.send(JSON.stringify({ kind: 'heartbeat', time: deviceClock.nowMs() } satisfies DeviceFrame));
      this.#callOffHeartbeat = clock.after(everySeconds * 1000, () => beat(deviceClock.isHeard()));
    };
    // The first one before what was kept back: the server judges late throws by it.
    beat(deviceClock.isHeard() || this.#unsettled.count > 0);
  }

  #stopTimers(): void {
    this.#callOffHeartbeat?.();
    this.#callOffReconnect?.();
    this.#callOffAnswer?.();
    this.#callOffHeartbeat = this.#callOffReconnect = this.#callOffAnswer = null;
  }

  #tellIfSettled(): void {
    if (this.#unsettled.count === 0) this.#tellWaiting();
  }

  #tellWaiting(): void {
    for (const resolve of this.#waiting.splice(0)) resolve();
  }
}

function readServerFrame(text: string): ServerFrame | null {
  try {
    return serverFrameSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}
