import { describe, expect, it } from 'vitest';
import { GUIDELINE, guidelineRow, restDaysAfter } from '../../core/coaching/arm-care-guideline.ts';

// Published: the guideline of the US baseball governing bodies for pitches in games, United States, read in a copy of
// about 2015. Later copies allow more between 17 and 22; the stricter row is held here.
// Each row: ages, the day's most, then the first and last count of each number of rest days; no last means and more.
const TABLE: readonly (readonly [fromAge: number, toAge: number, dayMost: number, rest: readonly (readonly [from: number, to: number | null, days: number])[]])[] = [
  [7, 8, 50, [[1, 20, 0], [21, 35, 1], [36, 50, 2]]],
  [9, 10, 75, [[1, 20, 0], [21, 35, 1], [36, 50, 2], [51, 65, 3], [66, null, 4]]],
  [11, 12, 85, [[1, 20, 0], [21, 35, 1], [36, 50, 2], [51, 65, 3], [66, null, 4]]],
  [13, 14, 95, [[1, 20, 0], [21, 35, 1], [36, 50, 2], [51, 65, 3], [66, null, 4]]],
  [15, 16, 95, [[1, 30, 0], [31, 45, 1], [46, 60, 2], [61, 75, 3], [76, null, 4]]],
  [17, 18, 105, [[1, 30, 0], [31, 45, 1], [46, 60, 2], [61, 75, 3], [76, null, 4]]],
  [19, 22, 120, [[1, 30, 0], [31, 45, 1], [46, 60, 2], [61, 75, 3], [76, 105, 4], [106, null, 5]]],
];

describe('the guideline for pitches of one day', () => {
  it('is the one of the table, row by row and no row more', () => {
    expect(GUIDELINE.rows.map(({ fromAge, toAge, dayMost }) => [fromAge, toAge, dayMost])).toEqual(TABLE.map(([from, to, most]) => [from, to, most]));
    expect(GUIDELINE.mark).toBe('published');
  });

  it.each(TABLE)('from %i to %i years allows %i a day, and asks for rest at both ends of every column', (fromAge, toAge, dayMost, rest) => {
    for (let age = fromAge; age <= toAge; age += 1) {
      const { row, house } = guidelineRow(age);
      expect({ dayMost: row.dayMost, house }).toEqual({ dayMost, house: null });
      for (const [from, to, restDays] of rest) {
        expect(restDaysAfter(from, row)).toEqual({ restDays, house: null });
        expect(restDaysAfter(to ?? dayMost, row)).toEqual({ restDays, house: null });
      }
    }
  });

  it('says besides: not three days running, not two games a day, no catching in between', () => {
    expect(GUIDELINE.alsoSays).toEqual(['not-three-days-running', 'not-two-games-a-day', 'no-catching-between']);
  });
});

// House rules where the guideline is silent.
describe('where the guideline is silent a house rule says so', () => {
  it.each([[23], [41]])('at %i years the row of 19 to 22 serves', (age) => {
    expect(guidelineRow(age)).toMatchObject({ row: { fromAge: 19, dayMost: 120 }, house: 'no-guideline-over-22' });
  });

  it('under 7 the row of 7 and 8 serves', () => {
    expect(guidelineRow(6)).toMatchObject({ row: { fromAge: 7, dayMost: 50 }, house: 'no-guideline-under-7' });
  });

  it('beyond the last column of 7 and 8 the columns of the next row serve', () => {
    const { row } = guidelineRow(8);
    expect(restDaysAfter(51, row)).toEqual({ restDays: 3, house: 'beyond-last-column' });
    expect(restDaysAfter(66, row)).toEqual({ restDays: 4, house: 'beyond-last-column' });
    expect(restDaysAfter(66, guidelineRow(9).row).house).toBeNull();
  });

  it('nothing thrown asks for no rest', () => {
    for (const row of GUIDELINE.rows) expect(restDaysAfter(0, row).restDays).toBe(0);
  });
});
