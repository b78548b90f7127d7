import type { Pulse } from '../../core/facts/wire.ts';

/** Messages that may wait for a viewer's connection before it counts as slow. */
const MOST_WAITING = 8;

/** A viewer as far as a channel needs to know it. */
export interface Viewer {
  /** Names its connection. */
  readonly id: string;
  /** Many look at it: it is sent a view before those who look alone. */
  readonly hangs: boolean;
  /** Its connection does not take up what is sent. */
  isSlow(): boolean;
  pulse(pulse: Pulse): void;
}

/** What is used of the engine under a socket of socket.io. */
interface Engine {
  on(event: 'packetCreate' | 'drain', listener: () => void): unknown;
}

/** Counts what a connection has not yet passed on. `onDrained` is called whenever it has passed on everything. */
export function backlogOf(engine: Engine, onDrained: () => void): { isSlow(): boolean } {
  let waiting = 0;
  engine.on('packetCreate', () => {
    waiting += 1;
  });
  engine.on('drain', () => {
    waiting = 0;
    onDrained();
  });
  return { isSlow: () => waiting >= MOST_WAITING };
}
