import { FAMILIES } from '../../core/facts/vocabulary.ts';
import type { Section } from '../section.ts';
import { intervalText, overSeeds, perSeed, ratioOverSeeds, type OverSeeds } from './over-seeds.ts';
import { WINTER } from './parameters.ts';
import type { AthletesWinter, Outcome } from './winter.ts';

const TIMES_AS_OFTEN = 1.5;
const OR_AT_LEAST = 0.9;

type Of = (winter: AthletesWinter) => number;

/** Which family each coach came to, against the one that is truly best. */
export function familySection(seasons: readonly (readonly AthletesWinter[])[]): Section {
  const of = (value: Of): OverSeeds => overSeeds(perSeed(seasons, value));
  const right = { advised: perSeed(seasons, ({ advised }) => Number(advised.right)), naive: perSeed(seasons, ({ naive }) => Number(naive.right)) };
  const [advised, ratio] = [overSeeds(right.advised), ratioOverSeeds(right.advised, right.naive)];
  const both = (what: string, value: (outcome: Outcome) => number, text: (value: OverSeeds) => string): string[] =>
    [what, text(of((winter) => value(winter.advised))), text(of((winter) => value(winter.naive)))];
  const all = seasons.flat();
  const kept = ratio.low >= TIMES_AS_OFTEN || advised.low >= OR_AT_LEAST;
  return {
    title: 'A simulated winter: the right family',
    about: [
      `${all.length} invented athletes (${seasons.length} seeds), ${WINTER.bullpens} bullpens of ${WINTER.throwsPerBullpen} throws each; means with the 95 % interval over the seeds. One coach follows what the planning screen says, from device frames alone, for at most ${WINTER.familyBullpensAtMost} bullpens;`,
      'the other takes the family from the efficiency of the first fastballs: over 95 % a turnover, under 80 % a seam-effect one, else a split. The best family is the one with the lowest true expected miss of the athlete’s target, with the plainest grip:',
      'the miss counts how far throws end outside the target and their scatter as well, in smallest differences that matter (2 in), and it is what the verdict is about. How hard the speed gap is to hit is not in it.',
    ],
    header: ['what', 'by the advice', 'by efficiency alone'],
    rows: [
      both('right family, %', ({ right: hit }) => 100 * Number(hit), one),
      ['times as often', `${two(ratio)}, bound: at least ${TIMES_AS_OFTEN} (or ${100 * OR_AT_LEAST} %)`, '1'],
      ...FAMILIES.map((family) => ofBest(all.filter(({ best }) => best === family), family)),
      both('true miss beyond that of the best family', ({ regret }) => regret, two),
      both('… more than half a smallest difference, %', ({ regret }) => 100 * Number(regret > 0.5), one),
      ['"try all three" after the first fastballs, %', one(of(({ advised: { chosen } }) => 100 * Number(chosen.first === 'try-all'))), 'never'],
      ['no family clearly ahead at the end, %', one(of(({ advised: { chosen } }) => 100 * Number(chosen.last === 'try-all'))), 'never'],
      ['… and the first of the order is right then, %', shareText(all.filter(({ advised: { chosen } }) => chosen.last === 'try-all').map((winter) => winter.advised.right)), ''],
      ['bullpens spent on families', two(of(({ advised: { chosen } }) => chosen.bullpens)), '0'],
      both('true miss at the end of the winter, with what was kept', ({ missAtEnd }) => missAtEnd, two),
    ],
    missed: kept ? [] : [`right family: ${two(ratio)} times as often where at least ${TIMES_AS_OFTEN} times (or ${100 * OR_AT_LEAST} %) was promised of the lower limit.`],
  };
}

const ofBest = (winters: readonly AthletesWinter[], family: string): string[] =>
  [`right where a ${family} is best (${winters.length} athletes), %`, shareText(winters.map(({ advised }) => advised.right)), shareText(winters.map(({ naive }) => naive.right))];

const shareText = (hits: readonly boolean[]): string => (hits.length === 0 ? 'none' : ((100 * hits.filter(Boolean).length) / hits.length).toFixed(1));

const one = (value: OverSeeds): string => intervalText(value, 1);
const two = (value: OverSeeds): string => intervalText(value, 2);
