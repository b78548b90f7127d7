/** What a trace shows of one acknowledged throw. */
export interface Acknowledgement {
  readonly sequence: number;
  /** A flush of the log's file was completed behind the write of the throw and before its acknowledgement. */
  readonly flushed: boolean;
}

interface Happened {
  readonly kind: 'written' | 'flushed' | 'told';
  readonly sequences: readonly number[];
}

/**
 * Reads a trace in the order in which it was written: every acknowledgement, and whether the throw was on disk by then.
 * Only the first write of a throw counts; its page is written again with every later one.
 */
export function acknowledgementsIn(trace: string): Acknowledgement[] {
  const unflushed = new Set<number>();
  const flushed = new Set<number>();
  const acknowledgements: Acknowledgement[] = [];
  for (const { kind, sequences } of trace.split('\n').flatMap(happened)) {
    if (kind === 'written') sequences.filter((one) => !flushed.has(one)).forEach((one) => unflushed.add(one));
    if (kind === 'flushed') for (const one of unflushed) flushed.add(one);
    if (kind === 'flushed') unflushed.clear();
    if (kind === 'told') acknowledgements.push(...sequences.map((sequence) => ({ sequence, flushed: flushed.has(sequence) })));
  }
  return acknowledgements;
}

/** A call that was broken off by another thread's ends on a line of its own, which has its result and not its file. */
function happened(line: string): Happened[] {
  if (/ pwrite64\([^"]*facts\.db-wal>/.test(line)) return [{ kind: 'written', sequences: numbersIn(line, /\\"kind\\":\\"throw-measured\\".*?\\"sequence\\":(\d+),/g) }];
  if (/ f(?:data)?sync\([^)]*facts\.db-wal>\) *= 0/.test(line) || /<\.\.\. f(?:data)?sync resumed>.*= 0/.test(line)) return [{ kind: 'flushed', sequences: [] }];
  if (/ (?:write|writev)\(\d+<(?:socket|TCP)/.test(line)) return [{ kind: 'told', sequences: numbersIn(line, /\\"kind\\":\\"stored\\",\\"sequence\\":(\d+)\}/g) }];
  return [];
}

function numbersIn(line: string, pattern: RegExp): number[] {
  return [...line.matchAll(pattern)].map(([, digits]) => Number(digits));
}
