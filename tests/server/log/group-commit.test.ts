import { setImmediate as nextTurn } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { GroupCommit, type GroupEnd } from '../../../server/log/group-commit.ts';

type End = GroupEnd<string>;

/** A store that says what is done to it; each group ends when the test ends it, or when somebody waits for it. */
class HandStore {
  readonly done: string[] = [];
  readonly #underWay: { readonly writes: readonly string[]; readonly ended: (end: End) => void }[] = [];

  /** Those that were alone. */
  readonly alone: string[] = [];

  readonly write = (writes: readonly string[], isAlone: boolean, ended: (end: End) => void): void => {
    if (isAlone) this.alone.push(...writes);
    this.done.push(writes.join(' '));
    this.#underWay.push({ writes, ended });
  };

  readonly wait = (): void => {
    this.done.push('waited');
    this.end();
  };

  readonly forget = (): void => void this.done.push('forgot');

  /** Ends the oldest group that is under way: well, when nothing bad is in it. */
  end(as?: End): void {
    const { writes, ended } = this.#underWay.shift()!;
    ended(as ?? (writes.includes('bad') ? failed('itself') : { kind: 'lasts', written: writes }));
  }
}

const failed = (why: 'itself' | 'behind-another' | 'not-known'): End => ({ kind: 'failed', error: new Error(why), why });

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

test('a write is alone where nothing comes with it or is under way, and all is quiet once it has ended', async () => {
  const store = new HandStore();
  const { commits } = over(store);
  expect(commits.isQuiet).toBe(true);
  void commits.add('a');
  expect(commits.isQuiet).toBe(false);
  await nextTurn();
  void commits.add('b');
  await nextTurn();
  store.end();
  expect(commits.isQuiet).toBe(false);
  store.end();
  expect(commits.isQuiet).toBe(true);
  for (const write of ['c', 'd']) void commits.add(write);
  await nextTurn();
  expect(store.alone).toEqual(['a']);
});

test('writes that arrive together share a group, and what comes meanwhile lies ready behind it', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const first = [commits.add('a'), commits.add('b')];
  await nextTurn();
  const second = [commits.add('c'), commits.add('d')];
  await nextTurn();
  expect(store.done).toEqual(['a b', 'c d']);
  expect(lasting).toEqual([]);
  store.end();
  expect(await Promise.all(first)).toEqual(['a stored', 'b stored']);
  expect(lasting).toEqual(['a', 'b']);
  store.end();
  expect(await Promise.all(second)).toEqual(['c stored', 'd stored']);
});

test('no more than four groups are under way; the fifth is, before the first is answered, once that has ended', async () => {
  const store = new HandStore();
  const { commits } = over(store);
  const begun: string[] = [];
  const replies: Promise<string>[] = [];
  for (const write of ['a', 'b', 'c', 'd', 'e', 'f']) {
    replies.push(commits.add(write));
    await nextTurn();
  }
  expect(store.done).toEqual(['a', 'b', 'c', 'd']);
  void replies[0]!.then(() => begun.push(...store.done));
  store.end();
  await replies[0];
  expect(begun).toEqual(['a', 'b', 'c', 'd', 'e f']);
});

test('a crowd does not wait until all of it has come', () => {
  const store = new HandStore();
  const { commits } = over(store);
  for (let write = 1; write <= 100; write += 1) void commits.add(`${write}`);
  expect(store.done).toHaveLength(1);
  expect(store.done[0]!.split(' ')).toHaveLength(96);
});

test('a bad write fails alone, and what was written behind it is written anew and in order', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const replies = [commits.add('a'), commits.add('bad'), commits.add('c')];
  await nextTurn();
  replies.push(commits.add('d'));
  await nextTurn();
  store.end();
  // What was thought to be written is not forgotten while something that rests on it is under way, and nothing new is begun.
  replies.push(commits.add('e'));
  await nextTurn();
  expect(store.done).toEqual(['a bad c', 'd']);
  store.end(failed('behind-another'));
  for (let group = 0; group < 5; group += 1) store.end();
  expect(await Promise.all(replies)).toEqual(['a stored', 'failed: itself', 'c stored', 'd stored', 'e stored']);
  expect(store.done).toEqual(['a bad c', 'd', 'forgot', 'a', 'bad', 'forgot', 'c', 'd', 'e']);
  expect(lasting).toEqual(['a', 'c', 'd', 'e']);
});

test('of a group of which nobody knows whether it was written nothing is tried again, and nothing is told as lasting', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const replies = [commits.add('a'), commits.add('b')];
  await nextTurn();
  store.end(failed('not-known'));
  expect(await Promise.all(replies)).toEqual(['failed: not-known', 'failed: not-known']);
  expect(store.done).toEqual(['a b', 'forgot']);
  expect(lasting).toEqual([]);
});

test('flushing settles at once what is under way and what waits, in order, failures too', async () => {
  const store = new HandStore();
  const { commits, lasting } = over(store);
  const replies = [commits.add('a')];
  await nextTurn();
  replies.push(commits.add('b'), commits.add('bad'));
  commits.flush();
  expect(lasting).toEqual(['a', 'b']);
  expect(store.done).toEqual(['a', 'b bad', 'waited', 'waited', 'forgot', 'b', 'waited', 'bad', 'waited', 'forgot']);
  replies.push(commits.add('c'));
  await nextTurn();
  store.end();
  expect(await Promise.all(replies)).toEqual(['a stored', 'b stored', 'failed: itself', 'c stored']);
});
