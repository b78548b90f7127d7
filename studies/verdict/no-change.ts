import { comparisonAlpha, FEWEST_THROWS } from '../../core/coaching/verdict.ts';
import { boundText, missedBy, percent, roughPercent, type Bound, type Section } from '../section.ts';
import { shareOf } from '../share.ts';
import { anyClaim, play, type Chance, type Outcome } from './evenings.ts';
import { ordinaryT, shipped } from './judge.ts';
import { alternating, aThenB, MOST_B, overDays, thenB, type Order } from './order.ts';
import { heavyTails, missOfThrows, oneMeasure, slips, type Throwing } from './throwing.ts';

interface Kind {
  readonly name: string;
  readonly throwing: Throwing;
  readonly order: (countA: number) => Order;
  readonly bound: Bound | null;
  readonly countsA: readonly number[];
}

const FEW: Bound = { atMost: 0.025 };
const COUNTS_A = [10, 15, 20] as const;

const KINDS: readonly Kind[] = [
  { name: 'normal', throwing: oneMeasure({}), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'heavy tails (t with 3 degrees of freedom)', throwing: oneMeasure({ scatter: heavyTails }), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'one throw in twenty slips by 5 SD', throwing: oneMeasure({ scatter: slips }), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'miss, zone hit', throwing: missOfThrows(0, 0), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'miss, edge of the zone hit', throwing: missOfThrows(3, 3), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'miss, zone missed by 6 in', throwing: missOfThrows(9, 9), order: thenB, bound: FEW, countsA: COUNTS_A },
  { name: 'drift of 0.02 SD a throw, alternating blocks, both to n0', throwing: oneMeasure({ drift: 0.02 }), order: alternating, bound: FEW, countsA: [...COUNTS_A, 40] },
  { name: 'four days, each shifted by 1 SD', throwing: oneMeasure({ dayShift: 1 }), order: (countA) => overDays(4, countA, MOST_B), bound: FEW, countsA: COUNTS_A },
  { name: 'B scatters twice as much', throwing: oneMeasure({ scatterB: 2 }), order: thenB, bound: { atMost: 0.05 }, countsA: COUNTS_A },
  { name: 'B scatters twice as much', throwing: oneMeasure({ scatterB: 2 }), order: thenB, bound: null, countsA: [40] },
  { name: 'B scatters half as much', throwing: oneMeasure({ scatterB: 0.5 }), order: thenB, bound: null, countsA: COUNTS_A },
  { name: 'drift of 0.02 SD a throw, all of A and then all of B', throwing: oneMeasure({ drift: 0.02 }), order: thenB, bound: null, countsA: COUNTS_A },
  { name: 'drift of 0.02 SD a throw, blocks until A has n0, then B alone', throwing: oneMeasure({ drift: 0.02 }), order: blocksThenB, bound: null, countsA: [10, 20] },
  { name: 'neighbours correlate by 0.3', throwing: oneMeasure({ correlation: 0.3 }), order: thenB, bound: null, countsA: COUNTS_A },
];

function blocksThenB(countA: number): Order {
  const blocks = alternating(countA);
  return [...blocks, ...aThenB(0, MOST_B - countA)];
}

/** Nothing differs, and every `better` or `worse` is a false alarm. */
export function noChange(chance: Chance): Section {
  const alpha = comparisonAlpha(1);
  const played = KINDS.flatMap((kind) =>
    kind.countsA.map((countA) => {
      const judges = [shipped({ alpha, smallest: 1 }), ordinaryT()];
      const cell = { name: `${kind.name}, n0 ${countA}`, order: kind.order(countA), throwing: kind.throwing, judges, fewest: FEWEST_THROWS };
      return { kind, countA, outcome: play(cell, chance) };
    }),
  );
  return {
    title: 'Nothing differs: how often the verdict says that it does',
    about: [
      'In percent of evenings, after looking at every throw from the fifth of B to the fortieth; ± one standard error.',
      'Beside it, on the same throws: the ordinary 95 % t at every one of these looks, and how often a glance at the last three throws of each says "better". A glance always says one or the other.',
    ],
    header: ['throws', 'n0', 'verdict', 'bound', 'ordinary t', 'glance says better'],
    rows: played.map(({ kind, countA, outcome }) => row(kind, countA, outcome)),
    missed: played.flatMap(({ kind, outcome }) => missedBy(outcome.name, anyClaim(outcome.claims[0]!), kind.bound)),
  };
}

const row = ({ name, bound }: Kind, countA: number, { claims, glanceBetter, runs }: Outcome): string[] => [
  name,
  String(countA),
  percent(anyClaim(claims[0]!)),
  boundText(bound),
  roughPercent(anyClaim(claims[1]!)),
  roughPercent(shareOf(glanceBetter, runs)),
];
