import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { NotFlushed, openFlusher } from '../../../server/log/flusher.ts';
import { GroupCommit } from '../../../server/log/group-commit.ts';
import { folderForTest } from '../folder.ts';

/** A store that says what is done to it; each flush ends when the test ends it. */
class HandStore {
  readonly done: string[] = [];
  readonly #flushes: { resolve(): void; reject(error: Error): void }[] = [];
  #onFlush = (): void => {};

  readonly commit = (writes: readonly string[]): readonly string[] => {
    if (writes.includes('bad')) throw new Error('a bad write');
    this.done.push(`commit ${writes.join(' ')}`);
    return writes;
  };

  readonly flush = (): Promise<void> => new Promise((resolve, reject) => {
    this.done.push('flush');
    this.#flushes.push({ resolve, reject });
    this.#onFlush();
  });

  readonly flushNow = (): void => void this.done.push('flush now');

  /** Resolves once the next flush is under way. */
  begun(): Promise<void> {
    return this.#flushes.length > 0 ? Promise.resolve() : new Promise((resolve) => {
      this.#onFlush = resolve;
    });
  }

  async end(failure?: Error): Promise<void> {
    await this.begun();
    const flush = this.#flushes.shift()!;
    if (failure === undefined) flush.resolve();
    else flush.reject(failure);
  }
}

function over(store: HandStore) {
  const lasting: string[] = [];
  const commits = new GroupCommit<string, string, string>(store, {
    lasts(written) {
      lasting.push(written);
      return `${written} stored`;
    },
    failed: (error) => `failed: ${(error as Error).message}`,
  });
  return { commits, lasting };
}

test('writes that arrive together share a commit and a flush, and those that arrive meanwhile the next', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const first = [commits.add('a'), commits.add('b')];
  await store.begun();
  const second = [commits.add('c'), commits.add('d')];
  expect(commits.isBusy).toBe(true);
  expect(lasting).toEqual([]);
  await store.end();
  expect(await Promise.all(first)).toEqual(['a stored', 'b stored']);
  await store.end();
  expect(await Promise.all(second)).toEqual(['c stored', 'd stored']);
  expect(store.done).toEqual(['commit a b', 'flush', 'commit c d', 'flush']);
});

test('the next group is on its way to the disk before the last one is answered, and is answered behind it', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const first = commits.add('a');
  await store.begun();
  const second = [commits.add('bad'), commits.add('b')];
  const answered: string[] = [];
  const doneWhenAnswered = first.then((reply) => {
    answered.push(reply);
    return [...store.done];
  });
  for (const reply of second) void reply.then((said) => answered.push(said));
  await store.end();
  expect(await doneWhenAnswered).toEqual(['commit a', 'flush', 'commit b', 'flush']);
  expect(lasting).toEqual(['a']);
  await store.end();
  await Promise.all(second);
  expect(answered).toEqual(['a stored', 'failed: a bad write', 'b stored']);
});

test('a flush that fails fails what was committed before it, and nothing of that is told as lasting', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const replies = [commits.add('a'), commits.add('b')];
  await store.end(new Error('the disk'));
  expect(await Promise.all(replies)).toEqual(['failed: the disk', 'failed: the disk']);
  expect(lasting).toEqual([]);
});

test('a bad write fails alone', async () => {
  const store = new HandStore();
  const { commits } = over(store);
  const replies = [commits.add('a'), commits.add('bad'), commits.add('c')];
  await store.end();
  expect(await Promise.all(replies)).toEqual(['a stored', 'failed: a bad write', 'c stored']);
});

test('flushing at once settles what is under way and what waits, once and in order', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const first = commits.add('a');
  await store.begun();
  const second = commits.add('b');
  commits.flush();
  expect(lasting).toEqual(['a', 'b']);
  expect(store.done).toEqual(['commit a', 'flush', 'commit b', 'flush now']);
  // The flush that was under way comes to its end with nothing left to settle.
  await store.end();
  const third = commits.add('c');
  await store.end();
  expect(await Promise.all([first, second, third])).toEqual(['a stored', 'b stored', 'c stored']);
  expect(lasting).toEqual(['a', 'b', 'c']);
});

test('after one flush that failed none is believed any more', async () => {
  // Asked to flush what no disk is behind, the system answers with an error.
  const broken = openFlusher('/dev/null');
  onTestFinished(broken.close);
  await expect(broken.flush()).rejects.toThrow(NotFlushed);
  await expect(broken.flush()).rejects.toThrow(NotFlushed);
  expect(() => broken.flushNow()).toThrow(NotFlushed);
});

test('a flusher lets go of its file only when no flush is under way', async () => {
  const file = path.join(folderForTest(), 'a-file');
  writeFileSync(file, 'words');
  const flusher = openFlusher(file);
  const flushing = [flusher.flush(), flusher.flush()];
  flusher.close();
  expect(await Promise.all(flushing)).toEqual([undefined, undefined]);
});
