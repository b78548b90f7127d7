const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Aborted when somebody asks this program to stop, or when the program that started it is gone. */
export function askedToStop(): AbortSignal {
  const stopping = new AbortController();
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
