/**
 * The median time of some work in milliseconds.
 * @param times how often it is done
 * @param prepare called before each, untimed; returns the work
 */
export function medianMs(times: number, prepare: () => () => void): number {
  const tookMs = Array.from({ length: times }, () => {
    const work = prepare();
    const startedMs = performance.now();
    work();
    return performance.now() - startedMs;
  });
  return tookMs.toSorted((one, other) => one - other)[Math.floor(times / 2)]!;
}

/** Says what was measured, also where it is good enough. */
export function report(words: string): void {
  process.stdout.write(`  ${words}\n`);
}
