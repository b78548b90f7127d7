import { lagOneAutocorrelation } from '../statistics/lag-one.ts';
import { byDay, daysOf, type Valued } from './compared-throw.ts';

/** Above it the false alarms are several times what they should be; docs/evidence.md has the number. House rule. */
const ALIKE_ABOVE = 0.3;
/** Fewer throws cannot tell. */
const FEWEST = 20;

/** Whether neighbouring throws resemble each other once the mean of their trial on their day is taken off; in the order thrown. */
export function neighboursAlike(values: readonly Valued[]): boolean {
  if (values.length < FEWEST) return false;
  const days = daysOf(values);
  const tallies = byDay(values, days);
  const left = values.map(({ day, trial, value }) => value - tallies[days.indexOf(day)]![trial].mean);
  return (lagOneAutocorrelation(left) ?? 0) > ALIKE_ABOVE;
}
