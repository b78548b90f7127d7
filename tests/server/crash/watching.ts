import { io, type Socket } from 'socket.io-client';
import type { MoundView } from '../../../core/facts/views.ts';
import type { Pulse, SayReply, ViewMessage } from '../../../core/facts/wire.ts';
import { nextLink, UNLINKED, type LinkEvent, type LinkState } from '../../../web/live/link.ts';

/** A screen without a picture, in bad air: it keeps the state that a screen keeps, and comes back by the last place that it knows. */
export class WatchingScreen {
  #state: LinkState = UNLINKED;
  #looking: (() => void)[] = [];
  readonly #socket: Socket;
  readonly #mound: string;

  constructor(address: string, mound: string) {
    this.#mound = mound;
    this.#socket = io(address, { transports: ['websocket'], forceNew: true, reconnectionDelay: 5, reconnectionDelayMax: 50, timeout: 2000, auth: { speaker: 'coach' } });
    this.#socket.on('connect', () => {
      this.#happened({ kind: 'connected' });
      this.#watch();
    });
    this.#socket.on('disconnect', () => this.#happened({ kind: 'disconnected' }));
    this.#socket.on('view', (message: ViewMessage) => this.#happened({ kind: 'view', message, atMs: 0 }));
    // A screen waits for a second pulse before it believes that it missed something; a test has no time for that.
    this.#socket.on('pulse', (pulse: Pulse) => {
      this.#happened({ kind: 'pulse', pulse, atMs: 0 });
      if (this.#state.behindPulses > 0) this.#watch();
    });
  }

  get view(): MoundView | null {
    return this.#state.view;
  }

  /** Says something until it is answered, under one request id, however often the line breaks. */
  async say(request: string, says: unknown): Promise<SayReply> {
    for (;;) {
      const reply = await this.#socket.timeout(1000).emitWithAck('say', { request, mound: this.#mound, says }).catch(() => null) as SayReply | null;
      if (reply !== null && !(reply.kind === 'refused' && reply.code === 'storage-failed')) return reply;
    }
  }

  until(holds: (view: MoundView | null) => boolean): Promise<void> {
    return new Promise((resolve) => {
      const look = (): void => {
        if (!holds(this.view)) return;
        this.#looking = this.#looking.filter((other) => other !== look);
        resolve();
      };
      this.#looking.push(look);
      look();
    });
  }

  close(): void {
    this.#socket.close();
  }

  #watch(): void {
    this.#socket.emit('watch', { mound: this.#mound, session: null, place: this.#state.view?.place ?? null, log: this.#state.log }, () => {});
  }

  #happened(event: LinkEvent): void {
    const before = this.#state;
    this.#state = nextLink(before, event);
    if (this.#state.misfits > before.misfits) this.#watch();
    for (const look of [...this.#looking]) look();
  }
}
