import { io, type Socket } from 'socket.io-client';
import { expect, onTestFinished } from 'vitest';
import type { MoundView } from '../../core/facts/views.ts';
import type { Pulse, SayReply, ViewMessage, WatchReply, WatchRequest } from '../../core/facts/wire.ts';
import { applyChange } from '../../core/session/change.ts';
import type { RunningServer } from '../../server/serve.ts';

let requests = 0;

/** A screen that paints nothing: it keeps its view as a screen would, and every message it got. */
export class ScreenClient {
  readonly socket: Socket;
  readonly messages: ViewMessage[] = [];
  readonly pulses: Pulse[] = [];
  view: MoundView | null = null;
  log: string | null = null;
  #waiting: { readonly until: () => boolean; readonly resolve: () => void }[] = [];

  /**
   * @param auth what it says when it connects; nothing is a coach's screen
   * @param headers what its browser sends along, such as cookies
   */
  constructor(server: RunningServer, auth: Record<string, unknown> = {}, headers: Record<string, string> = {}) {
    this.socket = io(server.address, { transports: ['websocket'], forceNew: true, auth, extraHeaders: headers });
    onTestFinished(() => void this.socket.close());
    this.socket.on('view', (message: ViewMessage) => this.#take(message));
    this.socket.on('disconnect', () => this.#look());
    this.socket.on('pulse', (pulse: Pulse) => {
      this.pulses.push(pulse);
      this.#look();
    });
  }

  watch(more: Partial<WatchRequest> = {}): Promise<WatchReply> {
    return this.socket.emitWithAck('watch', { mound: 'north-1', session: null, place: null, log: null, ...more });
  }

  say(says: unknown, request = `request-${++requests}`): Promise<SayReply> {
    return this.socket.emitWithAck('say', { request, mound: 'north-1', says });
  }

  /** Resolves as soon as something holds, looked at after each message. */
  until(holds: () => boolean): Promise<void> {
    return new Promise((resolve) => {
      this.#waiting.push({ until: holds, resolve });
      this.#look();
    });
  }

  atPlace(place: number): Promise<void> {
    return this.until(() => this.view?.place === place);
  }

  #take(message: ViewMessage): void {
    this.messages.push(message);
    this.log = message.log;
    if (message.kind === 'snapshot') this.view = message.view;
    else {
      expect(message.from).toBe(this.view?.place);
      this.view = applyChange(this.view!, message);
    }
    this.#look();
  }

  #look(): void {
    this.#waiting = this.#waiting.filter(({ until, resolve }) => {
      if (!until()) return true;
      resolve();
      return false;
    });
  }
}
