/** What a trace shows of one acknowledged throw. */
export interface Acknowledgement {
  readonly sequence: number;
  /** A flush of the log's file was completed behind the write of the throw and before its acknowledgement. */
  readonly flushed: boolean;
}

type Happened =
  | { readonly kind: 'written' | 'told'; readonly sequences: readonly number[] }
  /** By the thread that asked for it: a flush takes in what was written before it began. */
  | { readonly kind: 'flush-begun' | 'flush-ended' | 'flushed'; readonly thread: string };

/**
 * Reads a trace in the order in which it was written: every acknowledgement, and whether the throw was on disk by then.
 * Only the first write of a throw counts; its page is written again with every later one.
 */
export function acknowledgementsIn(trace: string): Acknowledgement[] {
  const unflushed = new Set<number>();
  const flushed = new Set<number>();
  const underWay = new Map<string, readonly number[]>();
  const acknowledgements: Acknowledgement[] = [];
  const flush = (sequences: Iterable<number>): void => {
    for (const one of [...sequences]) {
      flushed.add(one);
      unflushed.delete(one);
    }
  };
  for (const one of trace.split('\n').flatMap(happened)) {
    switch (one.kind) {
      case 'written': one.sequences.filter((sequence) => !flushed.has(sequence)).forEach((sequence) => unflushed.add(sequence)); break;
      case 'flush-begun': underWay.set(one.thread, [...unflushed]); break;
      case 'flush-ended': flush(underWay.get(one.thread) ?? []); underWay.delete(one.thread); break;
      case 'flushed': flush(unflushed); break;
      case 'told': acknowledgements.push(...one.sequences.map((sequence) => ({ sequence, flushed: flushed.has(sequence) }))); break;
    }
  }
  return acknowledgements;
}

/** A call that was broken off by another thread's ends on a line of its own, which has its result and not its file. */
function happened(line: string): Happened[] {
  const thread = /^\d+/.exec(line)?.[0] ?? '';
  if (/ pwrite64\([^"]*facts\.db-wal>/.test(line)) return [{ kind: 'written', sequences: numbersIn(line, /\\"kind\\":\\"throw-measured\\".*?\\"sequence\\":(\d+),/g) }];
  if (/ f(?:data)?sync\([^)]*facts\.db-wal>\) *= 0/.test(line)) return [{ kind: 'flushed', thread }];
  if (/ f(?:data)?sync\([^)]*facts\.db-wal> <unfinished/.test(line)) return [{ kind: 'flush-begun', thread }];
  if (/<\.\.\. f(?:data)?sync resumed>.*= 0/.test(line)) return [{ kind: 'flush-ended', thread }];
  if (/ (?:write|writev)\(\d+<(?:socket|TCP)/.test(line)) return [{ kind: 'told', sequences: numbersIn(line, /\\"kind\\":\\"stored\\",\\"sequence\\":(\d+)\}/g) }];
  return [];
}

function numbersIn(line: string, pattern: RegExp): number[] {
  return [...line.matchAll(pattern)].map(([, digits]) => Number(digits));
}
