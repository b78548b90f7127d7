import type { IsoDay, ThrowCount } from '../facts/care-view.ts';

/** Throws of one day, stage and effort, and where in the log the first of them stands. */
export interface PlacedCount extends ThrowCount {
  readonly day: IsoDay;
  readonly place: number;
}
