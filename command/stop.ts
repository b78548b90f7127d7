import { setMaxListeners } from 'node:events';
import { EXIT, Failure } from './failure.ts';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

let asked: AbortSignal | null = null;

/** Aborted when somebody asks this program to stop, or when the program that started it is gone. One for the whole program. */
export function askedToStop(): AbortSignal {
  asked ??= listen();
  return asked;
}

function listen(): AbortSignal {
  const stopping = new AbortController();
  // Whatever is under way waits for this one signal, in any number.
  setMaxListeners(0, stopping.signal);
  for (const signal of SIGNALS) process.on(signal, () => stopping.abort());
  if (process.connected) process.on('disconnect', () => stopping.abort());
  return stopping.signal;
}

export function aborted(stop: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (stop.aborted) resolve();
    else stop.addEventListener('abort', () => resolve(), { once: true });
  });
}

/**
 * Work that can be broken off: it looks at the signal, leaves nothing half done and ends.
 * @throws {Failure} as broken off, when it was
 */
export async function breakable<Result>(work: (stop: AbortSignal) => Promise<Result>): Promise<Result> {
  const stop = askedToStop();
  const result = await work(stop);
  if (stop.aborted) throw new Failure('Broken off.', EXIT.brokenOff);
  return result;
}
