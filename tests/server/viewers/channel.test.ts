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
  const [states$, coming$] = [new Subject<Ledger>(), new Subject<Ledger>()];
  const clock = handClock();
  const sent: { readonly to: readonly string[]; readonly message: ViewMessage }[] = [];
  let made = 0;
  const channel = new Channel({
    log: 'log-1', session: null, ledger: () => story.ledger(), shown: (view) => ((made += 1), view), states$, coming$, spaced: identity, watch: clock,
    deliver: (viewers, message) => void sent.push({ to: viewers.map(({ id }) => id), message }),
    onTrouble: (error) => expect.unreachable(String(error)),
  });
  for (const [id, how] of Object.entries(watching)) channel.watch(viewer(id, how === 'hangs'), null, null);
  sent.length = 0;
  made = 0;
  return {
    story, clock, sent, made: () => made,
    next: (ledger = story.ledger()) => states$.next(ledger),
    comes: (ledger: Ledger) => coming$.next(ledger),
  };
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

/** What a Wall is sent of the same where nothing is made ahead. */
function sentOf(tell: (story: Story) => void) {
  const { story, sent, next } = channelOf({ wall: 'hangs' });
  tell(story);
  next();
  return sent;
}

test('where something hangs the view of a throw is made while that is on its way, and sent once it is there', () => {
  const { story, sent, made, next, comes } = channelOf({ 'phone-1': 'in a hand', 'wall': 'hangs' });
  story.throw(82, 8, -10);
  const ledger = story.ledger();
  comes(ledger);
  expect(sent).toEqual([]);
  expect(made()).toBe(1);
  next(ledger);
  expect(made(), 'it is not made again').toBe(1);
  expect(sent).toEqual(sentOf((same) => same.throw(82, 8, -10)));
});

test('of a throw that never came to be nothing is sent', () => {
  const { story, sent, next, comes } = channelOf({ wall: 'hangs' });
  story.throw(70, -30, 20);
  comes(story.ledger());
  const other = new Story().open('s1', 'ada');
  other.throw(82, 8, -10);
  next(other.ledger());
  expect(sent).toEqual(sentOf((same) => same.throw(82, 8, -10)));
});

test('a view that was made ahead of something else that came first is sent as what differs from that', () => {
  const { story, sent, next, comes } = channelOf({ wall: 'hangs' });
  story.throw(82, 8, -10);
  comes(story.ledger());
  story.intent('s1', 'changeup');
  next();
  expect(sent).toEqual(sentOf((same) => {
    same.throw(82, 8, -10);
    same.intent('s1', 'changeup');
  }));
});

test('for hands alone nothing is made ahead', () => {
  const { story, made, comes } = channelOf({ 'phone-1': 'in a hand' });
  story.throw(82, 8, -10);
  comes(story.ledger());
  expect(made()).toBe(0);
});
