import type { ArmCareHouseRule } from '../facts/care-view.ts';

/** One age band of the guideline: the most of one day, and from how many pitches on how many days of rest are due. */
export interface GuidelineRow {
  readonly fromAge: number;
  readonly toAge: number;
  readonly dayMost: number;
  /** `[from, restDays]`, rising; below the first nothing was thrown. */
  readonly rest: readonly (readonly [from: number, restDays: number])[];
}

interface Guideline {
  readonly version: string;
  readonly mark: 'published';
  readonly rows: readonly GuidelineRow[];
  /** What it says besides the table. */
  readonly alsoSays: readonly ('not-three-days-running' | 'not-two-games-a-day' | 'no-catching-between')[];
}

const UNDER_15 = [[1, 0], [21, 1], [36, 2], [51, 3], [66, 4]] as const;
const FROM_15 = [[1, 0], [31, 1], [46, 2], [61, 3], [76, 4]] as const;

/**
 * Pitches in games, by the US baseball governing bodies, from a copy of about 2015. Later copies allow more between
 * 17 and 22: this is the stricter one. The band 7–8 ends at 50, its day's most; beyond it the next band's columns
 * serve, as a house rule.
 */
export const GUIDELINE: Guideline = {
  version: 'copy-of-2015',
  mark: 'published',
  rows: [
    { fromAge: 7, toAge: 8, dayMost: 50, rest: [[1, 0], [21, 1], [36, 2]] },
    { fromAge: 9, toAge: 10, dayMost: 75, rest: UNDER_15 },
    { fromAge: 11, toAge: 12, dayMost: 85, rest: UNDER_15 },
    { fromAge: 13, toAge: 14, dayMost: 95, rest: UNDER_15 },
    { fromAge: 15, toAge: 16, dayMost: 95, rest: FROM_15 },
    { fromAge: 17, toAge: 18, dayMost: 105, rest: FROM_15 },
    { fromAge: 19, toAge: 22, dayMost: 120, rest: [...FROM_15, [106, 5]] },
  ],
  alsoSays: ['not-three-days-running', 'not-two-games-a-day', 'no-catching-between'],
};

/** The row for an age; outside 7 to 22 the nearest one, with the house rule that says so. */
export function guidelineRow(age: number): { readonly row: GuidelineRow; readonly house: ArmCareHouseRule | null } {
  const rows = GUIDELINE.rows;
  const youngest = rows[0]!;
  const oldest = rows.at(-1)!;
  if (age < youngest.fromAge) return { row: youngest, house: 'no-guideline-under-7' };
  if (age > oldest.toAge) return { row: oldest, house: 'no-guideline-over-22' };
  return { row: rows.find(({ toAge }) => age <= toAge)!, house: null };
}

/** Days of rest due after so many pitches of one day; none after none. */
export function restDaysAfter(pitches: number, row: GuidelineRow): { readonly restDays: number; readonly house: ArmCareHouseRule | null } {
  const beyond = row === GUIDELINE.rows[0] && pitches > row.dayMost;
  const columns = beyond ? UNDER_15 : row.rest;
  const restDays = columns.findLast(([from]) => pitches >= from)?.[1] ?? 0;
  return { restDays, house: beyond ? 'beyond-last-column' : null };
}
