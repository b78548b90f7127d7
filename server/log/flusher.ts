import { closeSync, fdatasync, fdatasyncSync, openSync } from 'node:fs';

/** The disk failed in a flush: nobody knows what of the newest writes is on it. */
export class NotFlushed extends Error {}

/** Makes last what was written to a file, beside whatever else the program does. */
export interface Flusher {
  /** Resolves once all that was written before the call is on the disk for good. Rejects with `NotFlushed`. */
  flush(): Promise<void>;
  /** The same at once, while everything waits. @throws {NotFlushed} */
  flushNow(): void;
  /** Lets go of the file, when nothing is under way any more. */
  close(): void;
}

/**
 * A flush takes milliseconds of waiting for the disk. The database can only do that while the whole program waits, so its commits
 * leave it out and the file is flushed here, by a thread that Node keeps for it.
 *
 * After one that failed, every further one fails: the system may have dropped the very pages that it could not write, and would
 * call the next flush a success all the same.
 */
export function openFlusher(file: string): Flusher {
  const opened = openSync(file, 'r+');
  let underWay = 0;
  let closed = false;
  let failure: NotFlushed | null = null;

  function letGo(): void {
    if (closed && underWay === 0) closeSync(opened);
  }

  return {
    flush: () => new Promise((resolve, reject) => {
      underWay += 1;
      fdatasync(opened, (error) => {
        underWay -= 1;
        if (error !== null) failure ??= notFlushed(error);
        letGo();
        if (failure === null) resolve();
        else reject(failure);
      });
    }),
    flushNow() {
      try {
        if (failure === null) fdatasyncSync(opened);
      } catch (error) {
        failure = notFlushed(error);
      }
      if (failure !== null) throw failure;
    },
    close() {
      if (closed) return;
      closed = true;
      letGo();
    },
  };
}

function notFlushed(cause: unknown): NotFlushed {
  return new NotFlushed(`The disk failed in a flush of the log (${(cause as Error).message}).`, { cause });
}
