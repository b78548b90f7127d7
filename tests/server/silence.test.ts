import { expect, test } from 'vitest';
import { Silence } from '../../server/silence.ts';
import { handClock } from './hand-clock.ts';

function silenceOf5s() {
  const hand = handClock();
  let setByMs = 0;
  const clock = { ...hand, nowMs: () => hand.nowMs() + setByMs };
  const called: number[] = [];
  const startMs = hand.nowMs();
  const silence = new Silence(clock, 5000, () => called.push(hand.nowMs() - startMs));
  return { silence, called, advance: hand.advance, set: (ms: number) => void (setByMs += ms) };
}

test('silence is told once, so long after what was heard last', () => {
  const { silence, called, advance } = silenceOf5s();
  advance(3000);
  silence.heard();
  advance(1500);
  silence.heard();
  advance(4999);
  expect(called).toEqual([]);
  advance(1);
  expect(called).toEqual([9500]);
  advance(60_000);
  expect(called).toEqual([9500]);
});

test('what never says a word is silent from the start', () => {
  const { called, advance } = silenceOf5s();
  advance(5000);
  expect(called).toEqual([5000]);
});

test('silence that is ended is never told', () => {
  const { silence, called, advance } = silenceOf5s();
  advance(4000);
  silence.heard();
  advance(2000);
  silence.end();
  advance(60_000);
  expect(called).toEqual([]);
});

test.each([['forward', 3_600_000], ['back', -3_600_000]])('a clock that is set %s while a device goes on sending makes nobody silent, and a device that stops is silent all the same', (_, byMs) => {
  const { silence, called, advance, set } = silenceOf5s();
  advance(4000);
  silence.heard();
  set(byMs);
  for (let second = 0; second < 20; second += 1) {
    advance(1000);
    silence.heard();
  }
  expect(called).toEqual([]);
  advance(10_000);
  expect(called).toHaveLength(1);
});
