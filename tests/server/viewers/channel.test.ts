import { identity, Subject } from 'rxjs';
import { expect, test } from 'vitest';
import type { ViewMessage } from '../../../core/facts/wire.ts';
import type { Ledger } from '../../../core/session/ledger.ts';
import { Channel } from '../../../server/viewers/channel.ts';
import type { Viewer } from '../../../server/viewers/line.ts';
import { Story } from '../../core/session/story.ts';
import { handClock } from '../hand-clock.ts';

const viewer = (id: string, hangs: boolean): Viewer => ({ id, hangs, isSlow: () => false, pulse: () => {} });

/** The channel of a mound on which a session is open, with whoever watches it, and what it sends to whom. */
function channelOf(watching: Readonly<Record<string, 'hangs' | 'in a hand'>>) {
  const story = new Story().open('s1', 'ada');
  const states$ = new Subject<Ledger>();
  const clock = handClock();
  const sent: { readonly to: readonly string[]; readonly message: ViewMessage }[] = [];
  const channel = new Channel({
    log: 'log-1', session: null, ledger: () => story.ledger(), shown: identity, states$, spaced: identity, watch: clock,
    deliver: (viewers, message) => void sent.push({ to: viewers.map(({ id }) => id), message }),
    onTrouble: (error) => expect.unreachable(String(error)),
  });
  for (const [id, how] of Object.entries(watching)) channel.watch(viewer(id, how === 'hangs'), null, null);
  sent.length = 0;
  return { story, clock, sent, next: () => states$.next(story.ledger()) };
}

test('what hangs on a wall is sent a throw at once, and what is held in a hand the same message when that is painted', () => {
  const { story, clock, sent, next } = channelOf({ 'phone-1': 'in a hand', 'wall': 'hangs', 'phone-2': 'in a hand' });
  story.throw(82, 8, -10);
  next();
  expect(sent.map(({ to }) => to)).toEqual([['wall']]);
  clock.advance(9);
  expect(sent).toHaveLength(1);
  clock.advance(1);
  expect(sent.map(({ to }) => to)).toEqual([['wall'], ['phone-1', 'phone-2']]);
  expect(sent[1]!.message).toEqual(sent[0]!.message);
  expect(sent[0]!.message).toMatchObject({ kind: 'change', from: 1, skipped: 0, head: { place: 2 }, throws: [{ place: 2 }] });
});

test('what is not a throw goes to all of them at once, and with it a throw that waited', () => {
  const { story, clock, sent, next } = channelOf({ 'phone-1': 'in a hand', 'wall': 'hangs' });
  story.throw(82, 8, -10);
  next();
  story.intent('s1', 'changeup');
  next();
  expect(sent.map(({ to, message }) => [to, message.kind === 'change' && message.from, message.kind === 'change' && message.skipped])).toEqual([[['wall'], 1, 0], [['phone-1'], 1, 1], [['wall'], 2, 0]]);
  clock.advance(1000);
  expect(sent).toHaveLength(3);
});

test('where nothing hangs nobody waits', () => {
  const { story, sent, next } = channelOf({ 'phone-1': 'in a hand', 'phone-2': 'in a hand' });
  story.throw(82, 8, -10);
  next();
  expect(sent.map(({ to }) => to)).toEqual([['phone-1', 'phone-2']]);
});
