import { expect, test } from 'vitest';
import { momentIn } from '../../../core/imports/local-moment.ts';

const at = (zone: string, day: string, hours: number): string => new Date(momentIn(zone, day, hours * 3_600_000)).toISOString();

test('a time of day is a moment of its own zone, in summer and in winter', () => {
  expect(at('America/Chicago', '2024-07-03', 17.5)).toBe('2024-07-03T22:30:00.000Z');
  expect(at('America/Chicago', '2024-01-03', 17.5)).toBe('2024-01-03T23:30:00.000Z');
  expect(at('Asia/Kolkata', '2024-01-03', 0)).toBe('2024-01-02T18:30:00.000Z');
  expect(at('Pacific/Kiritimati', '2024-01-03', 1)).toBe('2024-01-02T11:00:00.000Z');
});

test('where the clocks change a time that is left out counts on, and of one that comes twice the first is meant', () => {
  expect(at('America/New_York', '2024-03-10', 2.5)).toBe('2024-03-10T07:30:00.000Z');
  expect(at('America/New_York', '2024-11-03', 1.5)).toBe('2024-11-03T05:30:00.000Z');
  expect(at('America/New_York', '2024-03-10', 10)).toBe('2024-03-10T14:00:00.000Z');
  // There the clocks change on the half hour of universal time.
  expect(at('America/St_Johns', '2024-03-10', 3.25)).toBe('2024-03-10T05:45:00.000Z');
});
