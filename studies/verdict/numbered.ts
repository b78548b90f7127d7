import { comparisonAlpha, FEWEST_THROWS } from '../../core/coaching/verdict.ts';
import { percent, type Section } from '../section.ts';
import { anyClaim, foundWithin, play, type Chance, type Claims } from './evenings.ts';
import { shipped } from './judge.ts';
import { MOST_B, thenB } from './order.ts';
import { oneMeasure, type Throwing } from './throwing.ts';

const NUMBERS = [1, 2, 3, 4, 5, 6] as const;
const COUNTS_A = [10, 20] as const;

/** What the price of many comparisons of one athlete is: the k-th runs at a smaller α. */
export function numberedComparisons(chance: Chance): Section {
  return {
    title: "An athlete's k-th comparison",
    about: ['In percent of evenings: false alarms when nothing differs, and how often a change of 1.5 SD is found. Together the α of all comparisons stay under 5 %.'],
    header: ['k', 'α', 'n0', 'false alarms', '1.5 SD within 10', '1.5 SD within 40'],
    rows: COUNTS_A.flatMap((countA) => rowsOf(countA, chance)),
    missed: [],
  };
}

/** All six look at the same throws. */
function rowsOf(countA: number, chance: Chance): string[][] {
  const judges = NUMBERS.map((k) => shipped({ alpha: comparisonAlpha(k), smallest: 1 }));
  const claimsOf = (name: string, throwing: Throwing): readonly Claims[] =>
    play({ name: `${name}, n0 ${countA}`, order: thenB(countA), throwing, judges, fewest: FEWEST_THROWS }, chance).claims;
  const still = claimsOf('numbered, no change', oneMeasure({}));
  const changed = claimsOf('numbered, 1.5 SD', oneMeasure({ shift: -1.5 }));
  return NUMBERS.map((k, i) => [
    String(k),
    (100 * comparisonAlpha(k)).toFixed(3),
    String(countA),
    percent(anyClaim(still[i]!)),
    percent(foundWithin(changed[i]!, 10)),
    percent(foundWithin(changed[i]!, MOST_B)),
  ]);
}
