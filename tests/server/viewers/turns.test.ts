import { Subject } from 'rxjs';
import { expect, test } from 'vitest';
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { Stopwatch } from '../../../server/clock.ts';
import { inTurns, Turns } from '../../../server/viewers/turns.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';
import { serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

/** A log on which so much is under way. */
const busy = (isCrowded: () => boolean = () => false, isQuiet = false) => ({ isCrowded, isQuiet: () => isQuiet });

/** A stopwatch in the test's hand. */
class HandWatch implements Stopwatch {
  ms = 0;
  readonly waiting: (() => void)[] = [];

  readonly nowMs = (): number => this.ms;
  readonly after = (_: number, then: () => void): (() => void) => {
    this.waiting.push(then);
    return () => {};
  };

  /** So much time goes by; then who waits looks again. */
  pass(ms: number): void {
    this.ms += ms;
    for (const look of this.waiting.splice(0)) look();
  }
}

test('one piece of work is done between two looks at what came in, the longest wished for first, each once', async () => {
  const turns = new Turns(busy());
  const done: string[] = [];
  const [first, second] = ['first', 'second'].map((name) => () => void done.push(name)) as [() => void, () => void];
  for (const work of [first, second, first]) turns.wish(work);
  expect(done).toEqual([]);
  await nextTurn();
  expect(done).toEqual(['first']);
  turns.drop(second);
  turns.wish(first);
  await nextTurn();
  await nextTurn();
  expect(done).toEqual(['first', 'first']);
});

test('where nothing else is on its way the first piece goes ahead of whatever is answered next, and the others wait as ever', async () => {
  const turns = new Turns(busy(() => false, true));
  const done: string[] = [];
  turns.wish(() => void done.push('first'));
  turns.wish(() => void done.push('second'));
  const answered = Promise.resolve().then(() => done.push('answer'));
  expect(done).toEqual([]);
  await answered;
  expect(done).toEqual(['first', 'answer']);
  await nextTurn();
  expect(done).toEqual(['first', 'answer', 'second']);
});

test('in a crowd work rests seven times as long as it took, and without one not at all', async () => {
  const watch = new HandWatch();
  let isCrowded = true;
  const turns = new Turns(busy(() => isCrowded), watch);
  let done = 0;
  const again = async (): Promise<void> => {
    turns.wish(() => {
      done += 1;
      watch.ms += 4;
    });
    await nextTurn();
  };
  await again();
  expect(done).toBe(1);
  await again();
  watch.pass(27);
  expect(done).toBe(1);
  // What has begun to rest rests, though the crowd has been answered meanwhile: the next one is on its way.
  isCrowded = false;
  await again();
  expect(done).toBe(1);
  watch.pass(1);
  expect(done).toBe(2);
  await again();
  expect(done).toBe(3);
});

test('of what comes before its turn only the newest is passed on, and nothing once nobody listens', async () => {
  const source = new Subject<number>();
  const seen: number[] = [];
  const listening = source.pipe(inTurns(new Turns(busy()))).subscribe((value) => seen.push(value));
  for (const value of [1, 2, 3]) source.next(value);
  await nextTurn();
  expect(seen).toEqual([3]);
  source.next(4);
  listening.unsubscribe();
  await nextTurn();
  expect(seen).toEqual([3]);
});

test('throws that come in crowds are shown together, and none is missing', async () => {
  const server = await serverForTest();
  const screen = new ScreenClient(server);
  await screen.watch();
  await screen.say(opened());
  const { client } = await DeviceClient.greet(server.address, server.token);
  const throws = 200;
  for (let sequence = 1; sequence <= throws; sequence += 1) client.send({ kind: 'throw', sequence, time: 1000 * sequence, body: summary() });
  await screen.atPlace(throws + 1);
  expect(screen.view?.session?.counts.all).toBe(throws);
  expect(screen.messages.length).toBeLessThan(throws / 2);
});
