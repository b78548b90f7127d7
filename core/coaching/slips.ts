import { grubbs } from '../statistics/grubbs.ts';
import { daysOf, ofTrial, type Valued } from './compared-throw.ts';

/**
 * Places of throws that lie farther from the others of their trial and day than one clean sample in twenty holds. Worth
 * a look; nothing is left out because of it.
 */
export function slipsAmong(throws: readonly Valued[]): number[] {
  const sets = daysOf(throws).flatMap((day) => (['a', 'b'] as const).map((trial) => ofTrial(throws, trial).filter((one) => one.day === day)));
  return sets.flatMap((set) => {
    const found = grubbs(set.map(({ value }) => value));
    return found?.flagged === true ? [set[found.index]!.place] : [];
  });
}
