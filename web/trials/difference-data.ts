import type { Comparison } from '../../core/coaching/comparison.ts';
import { MISS_OF_ONE_M } from '../../core/coaching/target.ts';
import type { DifferenceData } from '../charts/difference-line.ts';
import { movementIn, MOVEMENT_UNIT } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import type { Names } from './names.ts';
import { missDifference, missLength } from './verdict-words.ts';

/** The interval of the miss as a picture, in the viewer's unit; null where there is none. */
export function differenceData({ verdict: found, smallestMiss }: Comparison, { b }: Names, speech: Speech): DifferenceData | null {
  if (found.kind === 'too-few') return null;
  const say = speech.words.trials.verdict;
  const inUnit = (miss: number): number => movementIn(speech.units, miss * MISS_OF_ONE_M);
  const { difference, low, high, shrunken } = found;
  const smallest = missLength(smallestMiss, speech);
  return {
    difference: inUnit(difference), low: inUnit(low), high: inUnit(high), shrunken: inUnit(shrunken), smallest: inUnit(smallestMiss),
    ruling: { perSi: 1, unit: MOVEMENT_UNIT[speech.units] },
    texts: {
      name: say.line,
      description: say.lineSays(missDifference(difference, speech), missDifference(low, speech), missDifference(high, speech), smallest),
      less: say.better(b), more: say.worse(b), small: say.small(smallest),
    },
  };
}
