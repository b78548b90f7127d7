import { expect, test } from 'vitest';
import type { Refusal, SayReply } from '../../../core/facts/wire.ts';
import { Pace } from '../../../server/viewers/too-fast.ts';
import { handClock } from '../hand-clock.ts';
import { serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

test('a screen that asks for view after view is told to wait, and another screen is not', async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const greedy = new ScreenClient(server);
  const replies = await Promise.all(Array.from({ length: 101 }, () => greedy.watch()));
  expect(replies.map((reply) => (reply.kind === 'refused' ? reply.code : reply.kind))).toEqual([...Array.from({ length: 100 }, () => 'watching'), 'too-fast']);
  expect(await new ScreenClient(server).watch()).toEqual({ kind: 'watching' });
  clock.advance(2000);
  expect(await greedy.watch()).toEqual({ kind: 'watching' });
});

test('of statements that nobody waited for only so many may stand in line', async () => {
  const pace = new Pace(() => 0);
  const answers: ((reply: SayReply) => void)[] = [];
  const ask = (): string => {
    const refused = pace.refusal('say', true);
    if (refused === null) void pace.said(new Promise<SayReply>((resolve) => answers.push(resolve)));
    return refused?.code ?? 'taken';
  };
  expect(Array.from({ length: 257 }, ask)).toEqual([...Array.from({ length: 256 }, () => 'taken'), 'too-fast']);
  answers.shift()!({ kind: 'stored', place: 1 });
  await Promise.resolve().then(() => {}).then(() => {});
  expect(ask()).toBe('taken');
  expect(ask()).toBe('too-fast');
});

test('what a coach says and is stored costs nothing; an athlete is held to what a person can say', () => {
  const say = (isCoach: boolean): string[] => {
    const pace = new Pace(() => 0);
    return Array.from({ length: 1200 }, () => pace.refusal('say', isCoach)?.code ?? 'taken');
  };
  expect(new Set(say(true))).toEqual(new Set(['taken']));
  expect(say(false).filter((one) => one === 'taken')).toHaveLength(1000);
});

test('a screen that says what is refused, again and again, is told to wait before it is looked at', async () => {
  const server = await serverForTest({ clock: handClock() });
  const wrong = new ScreenClient(server);
  const codes: string[] = [];
  for (let crowd = 0; crowd < 6; crowd += 1) {
    const replies: SayReply[] = await Promise.all(Array.from({ length: 200 }, () => wrong.say({ kind: 'nonsense' })));
    codes.push(...replies.map((reply) => (reply as Refusal).code));
  }
  expect([codes.filter((code) => code === 'malformed').length, codes.filter((code) => code === 'too-fast').length]).toEqual([1000, 200]);
});

test('a screen that does not stop is ended, with the reason', async () => {
  const server = await serverForTest({ clock: handClock() });
  const wild = new ScreenClient(server);
  const ended = new Promise<Refusal>((resolve) => wild.socket.on('ended', resolve));
  const left = new Promise<string>((resolve) => wild.socket.on('disconnect', resolve));
  for (let count = 0; count < 2001; count += 1) wild.socket.emit('anything');
  expect(await ended).toMatchObject({ kind: 'refused', code: 'too-fast' });
  expect(await left).toBe('io server disconnect');
});
