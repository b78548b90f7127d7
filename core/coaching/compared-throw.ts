import type { IsoDay } from '../facts/care-view.ts';
import type { Reading } from '../facts/views.ts';
import type { ComparedDay } from '../statistics/blocked-difference.ts';
import { tallyOf } from '../statistics/tally.ts';

/** What a comparison takes of a throw: its separation from the baseline of its day. Arm side positive, SI. */
export interface ComparedThrow {
  /** Its place in the log. */
  readonly place: number;
  readonly day: IsoDay;
  readonly trial: 'a' | 'b';
  readonly excluded: boolean;
  readonly verticalM: number;
  readonly armSideM: number;
  readonly speedMps: Reading;
  readonly tiltRad: Reading;
}

/** One number of a throw. */
export interface Valued {
  readonly place: number;
  readonly day: IsoDay;
  readonly trial: 'a' | 'b';
  readonly value: number;
}

/** Days on which any of them was thrown, in the order of the calendar. */
export const daysOf = (throws: readonly { readonly day: IsoDay }[]): IsoDay[] => [...new Set(throws.map(({ day }) => day))].sort();

export const ofTrial = <One extends { readonly trial: 'a' | 'b' }>(throws: readonly One[], trial: 'a' | 'b'): One[] =>
  throws.filter((one) => one.trial === trial);

/** Values day by day and trial by trial, for the days given. */
export const byDay = (values: readonly Valued[], days: readonly IsoDay[]): ComparedDay[] =>
  days.map((day) => {
    const thatDay = values.filter((value) => value.day === day);
    return { a: tallyOf(ofTrial(thatDay, 'a').map(({ value }) => value)), b: tallyOf(ofTrial(thatDay, 'b').map(({ value }) => value)) };
  });
