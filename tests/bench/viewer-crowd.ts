import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { WebSocket } from 'ws';

/** A viewer that reads nothing: it speaks the transport by hand, so that a crowd of them takes little from what is measured. */
class Viewer {
  readonly socket: WebSocket;
  #onView: (text: string) => void = () => {};

  constructor(address: string) {
    this.socket = new WebSocket(`${address.replace(/^http/, 'ws')}/socket.io/?EIO=4&transport=websocket`);
    this.socket.on('message', (data: Buffer) => this.#take(data.toString('utf8')));
  }

  say(name: string, value: unknown): void {
    this.socket.send(`42${JSON.stringify([name, value])}`);
  }

  /** Resolves with the next view. */
  nextView(): Promise<string> {
    return new Promise((resolve) => {
      this.#onView = resolve;
    });
  }

  set onView(take: (text: string) => void) {
    this.#onView = take;
  }

  async connected(): Promise<void> {
    for (;;) {
      // oxlint-disable-next-line no-await-in-loop -- one packet after the other
      const [data] = (await once(this.socket, 'message')) as [Buffer];
      if (data.toString('utf8').startsWith('40')) return;
    }
  }

  #take(text: string): void {
    if (text.startsWith('0')) this.socket.send('40');
    else if (text === '2') this.socket.send('3');
    else if (text.startsWith('42["view"')) this.#onView(text);
  }
}

export interface Crowd {
  /** Of the last view that came. */
  newest(): string;
  /** Milliseconds from now until each viewer of a mound has the next view. */
  lastHas(mound: string): Promise<number>;
  close(): void;
}

/** So many viewers of each mound, all of them with a first view. */
export async function crowdAt(address: string, mounds: readonly string[], each: number): Promise<Crowd> {
  let newest = '';
  const byMound = new Map<string, readonly Viewer[]>();
  for (const mound of mounds) {
    const viewers = Array.from({ length: each }, () => new Viewer(address));
    byMound.set(mound, viewers);
    // oxlint-disable-next-line no-await-in-loop -- mound by mound, so that nobody waits in a queue of connections
    await Promise.all(viewers.map(async (viewer) => {
      await viewer.connected();
      const first = viewer.nextView();
      viewer.say('watch', { mound, session: null, place: null, log: null });
      newest = await first;
    }));
  }
  return {
    newest: () => newest,
    lastHas: (mound) => new Promise((resolve) => {
      const startedMs = performance.now();
      const viewers = byMound.get(mound)!;
      let waiting = viewers.length;
      for (const viewer of viewers) {
        viewer.onView = (text) => {
          viewer.onView = () => {};
          newest = text;
          waiting -= 1;
          if (waiting === 0) resolve(performance.now() - startedMs);
        };
      }
    }),
    close: () => {
      for (const viewer of [...byMound.values()].flat()) viewer.socket.terminate();
    },
  };
}

/** What a process holds in memory, in kB. */
export function residentKb(pid: number): number {
  return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))![1]);
}
