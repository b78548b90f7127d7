import { comparisonAlpha, FEWEST_THROWS } from '../../core/coaching/verdict.ts';
import { percent, type Section } from '../section.ts';
import { anyClaim, foundWithin, play, type Chance, type Claims } from './evenings.ts';
import { largerAlways, pooledOnly, shipped } from './judge.ts';
import { MOST_B, thenB } from './order.ts';
import { oneMeasure } from './throwing.ts';

const QUESTIONS: readonly { readonly name: string; readonly different: Parameters<typeof oneMeasure>[0]; readonly countA: number; readonly count: (claims: Claims) => string }[] = [
  ...[10, 15, 20, 40].map((countA) => ({ name: 'false alarms, B scatters twice as much', different: { scatterB: 2 }, countA, count: falseAlarms })),
  ...[10, 20].map((countA) => ({ name: 'false alarms, B scatters half as much', different: { scatterB: 0.5 }, countA, count: falseAlarms })),
  ...[10, 15].map((countA) => ({ name: '1.5 SD found within 10', different: { shift: -1.5 }, countA, count: (claims: Claims) => percent(foundWithin(claims, 10)) })),
  ...[10, 15].map((countA) => ({ name: '1.5 SD found within 40', different: { shift: -1.5 }, countA, count: (claims: Claims) => percent(foundWithin(claims, MOST_B)) })),
];

/** Why the interval takes the larger of two variances only where the spread has changed. */
export const whichVariance = (chance: Chance): Section => ({
  title: 'Which variance the interval takes',
  about: [
    'The pooled variance alone gives many false alarms when the new grip scatters more; the larger of the pooled and the unequal-variance estimate gives few and finds less.',
    'What ships takes the larger one only where one spread is more than 1.5 times the other. In percent of the same evenings, at the α of a first comparison.',
  ],
  header: ['question', 'n0', 'pooled alone', 'ships', 'larger always'],
  rows: QUESTIONS.map(({ name, different, countA, count }) => {
    const alpha = comparisonAlpha(1);
    const judges = [pooledOnly(alpha), shipped({ alpha, smallest: 1 }), largerAlways(alpha)];
    const cell = { name: `which variance, ${name}, n0 ${countA}`, order: thenB(countA), throwing: oneMeasure(different), judges, fewest: FEWEST_THROWS };
    return [name, String(countA), ...play(cell, chance).claims.map(count)];
  }),
  missed: [],
});

function falseAlarms(claims: Claims): string {
  return percent(anyClaim(claims));
}
