import { comparisonAlpha, FEWEST_THROWS } from '../../core/coaching/verdict.ts';
import { boundText, missedBy, percent, roughPercent, type Bound, type Section } from '../section.ts';
import { shareOf } from '../share.ts';
import { foundWithin, middleCountB, play, type Chance, type Outcome } from './evenings.ts';
import { ordinaryT, shipped } from './judge.ts';
import { MOST_B, overDays, thenB, type Order } from './order.ts';
import { missOfThrows, oneMeasure, type Throwing } from './throwing.ts';

interface Change {
  readonly name: string;
  readonly throwing: Throwing;
  readonly order: (countA: number) => Order;
  readonly bounds: Readonly<Record<number, { readonly within10: Bound; readonly within40: Bound }>>;
}

const COUNTS_A = [10, 15, 20] as const;
const promised = { within10: { atLeast: 0.4 }, within40: { atLeast: 0.83 } };

const ONE_MEASURE: readonly Change[] = [
  { name: '1.0 SD', throwing: oneMeasure({ shift: -1 }), order: thenB, bounds: {} },
  { name: '1.5 SD', throwing: oneMeasure({ shift: -1.5 }), order: thenB, bounds: { 10: promised } },
  { name: '2.0 SD', throwing: oneMeasure({ shift: -2 }), order: thenB, bounds: {} },
  { name: '1.5 SD, over four days', throwing: oneMeasure({ shift: -1.5, dayShift: 1 }), order: (countA) => overDays(4, countA, MOST_B), bounds: {} },
];

const MISS: readonly Change[] = [
  { name: 'from 5 in outside to the edge', throwing: missOfThrows(8, 3), order: thenB, bounds: {} },
  { name: 'from the edge to the centre', throwing: missOfThrows(3, 0), order: thenB, bounds: {} },
  { name: 'straight across the centre, edge to edge', throwing: missOfThrows(3, -3), order: thenB, bounds: {} },
];

/** One measure gets better by some of its own SD: how often that is found, and after how many throws. */
export const changeOfOneMeasure = (chance: Chance): Section =>
  sectionOf(ONE_MEASURE, chance, 'One measure changes: how often and how soon that is found', [
    'In percent of evenings; throws of B needed in the middle one of those that found it. `raw` and `shrunken` are the mean difference shown at that moment, in SD: the raw one exaggerates.',
    'Over four days the throws of both are shared out evenly, so the first ten of B come when A has but a few.',
  ]);

/** The throws move towards the zone: what of that the miss sees. */
export const changeOfTheMiss = (chance: Chance): Section =>
  sectionOf(MISS, chance, 'The throws move towards the zone: how often the miss shows it', [
    'A zone of 3 in to each side, throws that scatter by 2.4 in vertically and 2.8 in sideways. `raw` and `shrunken` in smallest differences that matter (2 in).',
    'Edge to centre is a smaller gain in miss than it looks, for throws at the centre miss to all sides. A shift straight across leaves the miss as it was, and the screen has to say so.',
  ]);

function sectionOf(changes: readonly Change[], chance: Chance, title: string, about: readonly string[]): Section {
  const alpha = comparisonAlpha(1);
  const played = changes.flatMap((change) =>
    COUNTS_A.map((countA) => {
      const judges = [shipped({ alpha, smallest: 1 }), ordinaryT()];
      const name = `${change.name}, n0 ${countA}`;
      return { change, countA, outcome: play({ name, order: change.order(countA), throwing: change.throwing, judges, fewest: FEWEST_THROWS }, chance) };
    }),
  );
  return {
    title,
    about,
    header: ['change', 'n0', 'within 10', 'bound', 'within 40', 'bound', 'throws', 'raw', 'shrunken', 'says worse', 'ordinary t within 10', 'within 40', 'glance'],
    rows: played.map(({ change, countA, outcome }) => row(change, countA, outcome)),
    missed: played.flatMap(({ change, countA, outcome }) => missedOf(change, countA, outcome)),
  };
}

function row({ name, bounds }: Change, countA: number, { claims, glanceBetter, runs }: Outcome): string[] {
  const [verdict, ordinary] = [claims[0]!, claims[1]!];
  return [
    name,
    String(countA),
    percent(foundWithin(verdict, 10)),
    boundText(bounds[countA]?.within10 ?? null),
    percent(foundWithin(verdict, MOST_B)),
    boundText(bounds[countA]?.within40 ?? null),
    String(middleCountB(verdict) ?? 'none'),
    verdict.difference.toFixed(2),
    verdict.shrunken.toFixed(2),
    roughPercent(shareOf(verdict.worse, runs)),
    roughPercent(foundWithin(ordinary, 10)),
    roughPercent(foundWithin(ordinary, MOST_B)),
    roughPercent(shareOf(glanceBetter, runs)),
  ];
}

const missedOf = ({ bounds }: Change, countA: number, { name, claims }: Outcome): string[] => [
  ...missedBy(`${name}, found within 10`, foundWithin(claims[0]!, 10), bounds[countA]?.within10 ?? null),
  ...missedBy(`${name}, found within 40`, foundWithin(claims[0]!, MOST_B), bounds[countA]?.within40 ?? null),
];
