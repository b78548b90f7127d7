import { expect, it } from 'vitest';
import { momentMs, timelineOf } from '../../../core/session/timeline.ts';

const NOON_MS = Date.UTC(2026, 2, 14, 18, 0, 0);
const at = (...seconds: number[]): number[] => seconds.map((second) => NOON_MS + second * 1000);

it('throws come as far apart as they were thrown', () => {
  expect(timelineOf(at(0, 18, 40, 300), false)).toEqual([0, 18_000, 40_000, 300_000]);
});

it('a quiet of more than ten seconds can count as two', () => {
  expect(timelineOf(at(0, 10, 20.001, 25, 600), true)).toEqual([0, 10_000, 12_000, 16_999, 18_999]);
});

it('a server clock that was set back stops the timeline, and does not let the next throws rush by', () => {
  expect(timelineOf(at(0, 60, -3540, -3520), false)).toEqual([0, 60_000, 60_000, 80_000]);
});

it('the recorded moment runs between two throws, faster where quiet is folded', () => {
  const arrivedMs = at(0, 100);
  const folded = timelineOf(arrivedMs, true);
  expect(momentMs(arrivedMs, folded, 1, 500)).toBe(NOON_MS + 25_000);
  expect(momentMs(arrivedMs, timelineOf(arrivedMs, false), 1, 500)).toBe(NOON_MS + 500);
});

it('the recorded moment stands at the first fact before it came and at the last one after', () => {
  const arrivedMs = at(3, 5);
  expect(momentMs(arrivedMs, [0, 2000], 0, 0)).toBe(NOON_MS + 3000);
  expect(momentMs(arrivedMs, [0, 2000], 2, 2000)).toBe(NOON_MS + 5000);
  expect(momentMs([], [], 0, 0)).toBeNull();
});
