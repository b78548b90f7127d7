import { describe, expect, it } from 'vitest';
import { armCare, mayThrow } from '../../../core/coaching/arm-care.ts';
import { reasonForSet, setSize, type WorkedDay } from '../../../core/coaching/next-day-set.ts';

const HOUR = 3_600_000;
const day = (number: number, more: Partial<WorkedDay> = {}): WorkedDay => ({ firstAtMs: number * 24 * HOUR, lastAtMs: number * 24 * HOUR + HOUR, hits: 0, judged: 0, better: false, quietThrows: 0, ...more });
const careWith = (planned: number) => {
  const care = armCare({ birthYear: 2000, today: '2026-04-02', days: [], pain: null, soreness: null, ownDayMost: null, planned });
  if (!mayThrow(care)) throw new Error('this arm may not throw');
  return care;
};

describe('the reason for a set without feedback', () => {
  it('is a comparison that found the trial better, 24 hours after its last throw and no sooner', () => {
    const days = [day(1, { better: true })];
    expect(reasonForSet(days, 0.5, days[0]!.lastAtMs + 24 * HOUR)).toBe('found-better');
    expect(reasonForSet(days, 0.5, days[0]!.lastAtMs + 24 * HOUR - 1)).toBeNull();
  });

  it('is a gate that one block on target would meet: eight of nine for a half, not seven of nine', () => {
    // 13 of 14: 2¹⁴ / (15·14) = 78 is over 1/α = 20; 12 of 14: 2¹⁴ / (15·91) = 12 is not. Computed independently.
    expect(reasonForSet([day(1, { hits: 8, judged: 9 })], 0.5, day(3).firstAtMs)).toBe('gate-near');
    expect(reasonForSet([day(1, { hits: 7, judged: 9 })], 0.5, day(3).firstAtMs)).toBeNull();
  });

  it('is never a gate of comfort alone', () => {
    expect(reasonForSet([day(1, { hits: 9, judged: 9 })], null, day(3).firstAtMs)).toBeNull();
  });

  it('is used up by a set of five or more thrown a day later, not by four and not within the day', () => {
    const better = day(1, { better: true });
    expect(reasonForSet([better, day(3, { quietThrows: 5 })], null, day(5).firstAtMs)).toBeNull();
    expect(reasonForSet([better, day(3, { quietThrows: 4 })], null, day(5).firstAtMs)).toBe('found-better');
    expect(reasonForSet([better, day(1.5, { quietThrows: 9 })], null, day(5).firstAtMs)).toBe('found-better');
    expect(reasonForSet([better, day(3, { quietThrows: 5 }), day(4, { better: true })], null, day(6).firstAtMs)).toBe('found-better');
  });

  it('is not there before anything was worked on', () => expect(reasonForSet([], 0.5, 0)).toBeNull());
});

describe('the size of the set', () => {
  it('is ten, what is left when that is less, and no set under five', () => {
    expect([30, 10, 7, 5, 4].map((left) => setSize(careWith(left)))).toEqual([10, 10, 7, 5, null]);
  });
});
