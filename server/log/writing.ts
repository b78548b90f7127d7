import { MessageChannel, receiveMessageOnPort, Worker, type MessagePort } from 'node:worker_threads';
import { TABLES, type Grown, type Into, type Table, type Value } from './tables.ts';

/** The disk failed in a flush: nobody knows what of the newest writes is on it. */
export class NotFlushed extends Error {}

/** Rows of each of the tables, value by value. */
export type RowsOfTables = readonly (readonly Value[])[];

/** Rows that are to be written together. `attempt` is another one once everything has ended after a failure. */
export interface Rows {
  readonly attempt: number;
  readonly tables: RowsOfTables;
}

/** What the thread is started with. */
export interface ThreadStart {
  readonly file: string;
  readonly tables: readonly Table[];
  readonly largestPages: number | null;
  readonly pagesBeside: number;
  /** By which it hears rows, or null to close, and answers each with `ThreadSays`. */
  readonly port: MessagePort;
  /** How many answers it has given; who waits is woken by it. */
  readonly ended: Int32Array;
}

export type ThreadSays =
  | { readonly kind: 'lasts' }
  /** `not-known` is what failed in the flush: it may have been written all the same. */
  | { readonly kind: 'failed'; readonly code?: string | undefined; readonly message: string; readonly why: 'itself' | 'behind-another' | 'not-known' };

/** How long the thread may take for one answer before it is taken for dead, when everything waits for it. */
const DEAD_AFTER_MS = 120_000;

/** Rows that are collected to be written together. */
export class Together implements Grown {
  readonly facts = new Values();
  readonly numbers = new Values();
  readonly requests = new Values();
  readonly refusals = new Values();

  /** What was collected, in the order of `TABLES`; nothing is left here. */
  take(): RowsOfTables {
    return [this.facts, this.numbers, this.requests, this.refusals].map((values) => values.take());
  }
}

class Values implements Into {
  #values: Value[] = [];

  add(...row: Value[]): void {
    this.#values.push(...row);
  }

  take(): readonly Value[] {
    const values = this.#values;
    this.#values = [];
    return values;
  }
}

/** Why rows were not written, or perhaps not. */
export type Trouble = { readonly error: Error; readonly why: 'itself' | 'behind-another' | 'not-known' };

/** A thread that inserts rows into the log, commits and flushes them. */
export interface Writing {
  /** Tells once what became of the rows, in the order in which they were given: null where they are on the disk for good. */
  write(rows: RowsOfTables, ended: (trouble: Trouble | null) => void): void;
  /** Waits, and everything with it, until something that is under way has ended and been told of. */
  wait(): void;
  /** Lets go of the file; all that was under way has ended. */
  close(): void;
}

/** Starts the thread on a file that is open and in its newest format. Where it cannot open it, every write fails. */
export function startWriting({ file, largestPages, pagesBeside }: Pick<ThreadStart, 'file' | 'largestPages' | 'pagesBeside'>): Writing {
  const { port1: port, port2 } = new MessageChannel();
  const ended = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const start: ThreadStart = { file, tables: Object.values(TABLES), largestPages, pagesBeside, port: port2, ended };
  const thread = new Worker(new URL('./writing-thread.mjs', import.meta.url), { workerData: start, transferList: [port2], execArgv: [], env: {} });
  const underWay: ((says: ThreadSays) => void)[] = [];
  let attempt = 0;
  let hasFailed = false;
  let dead: Error | null = null;

  function tell(says: ThreadSays): void {
    const told = underWay.shift();
    hasFailed ||= says.kind === 'failed';
    if (underWay.length === 0) {
      port.unref();
      if (hasFailed) attempt += 1;
      hasFailed = false;
    }
    told?.(says);
  }

  function die(error: Error): void {
    dead ??= error;
    for (let left = underWay.length; left > 0; left -= 1) tell({ kind: 'failed', message: dead.message, why: 'not-known' });
  }

  function ask(rows: Rows | null, told: (says: ThreadSays) => void): void {
    underWay.push(told);
    if (dead !== null) return die(dead);
    port.ref();
    port.postMessage(rows);
  }

  function wait(): void {
    for (const before = underWay.length; underWay.length > 0 && underWay.length >= before;) {
      const answers = Atomics.load(ended, 0);
      const received = receiveMessageOnPort(port) as { message: ThreadSays } | undefined;
      if (received !== undefined) tell(received.message);
      else if (Atomics.wait(ended, 0, answers, DEAD_AFTER_MS) === 'timed-out') die(new Error('The thread that writes the log does not answer.'));
    }
  }

  port.on('message', tell);
  port.unref();
  thread.unref();
  thread.once('error', die);
  thread.once('exit', () => die(new Error('The thread that writes the log has ended.')));

  return {
    write: (tables, endedHere) => ask({ attempt, tables }, (says) => endedHere(says.kind === 'lasts' ? null : troubleOf(says))),
    wait,
    close() {
      ask(null, () => {});
      while (underWay.length > 0) wait();
      port.close();
    },
  };
}

function troubleOf({ code, message, why }: Extract<ThreadSays, { kind: 'failed' }>): Trouble {
  const error = why === 'not-known' ? new NotFlushed(`The disk failed in a flush of the log (${message}).`) : Object.assign(new Error(message), { code });
  return { error, why };
}
