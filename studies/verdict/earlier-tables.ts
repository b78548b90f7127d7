import { percent, type Section } from '../section.ts';
import type { Share } from '../share.ts';
import { anyClaim, play, type Chance } from './evenings.ts';
import { ordinaryT, pooledOnly } from './judge.ts';
import { thenB } from './order.ts';
import { oneMeasure } from './throwing.ts';

const ALPHA = 0.05;
const EARLIER_RUNS = 20_000;

type Different = Parameters<typeof oneMeasure>[0];
interface Line {
  readonly name: string;
  readonly different: Different;
  readonly judge: 'this rule' | 'ordinary t';
  /** Throws of B at the first look. */
  readonly fewest: number;
  /** By n0. */
  readonly expected: Readonly<Record<number, number>>;
}

/** Computed independently (SciPy, 20,000 runs a cell) before this was written; two or three digits. */
const LINES: readonly Line[] = [
  { name: 'false alarms, this rule', different: {}, judge: 'this rule', fewest: 3, expected: { 10: 0.013, 15: 0.015, 20: 0.016 } },
  { name: 'the same, B scatters twice as much', different: { scatterB: 2 }, judge: 'this rule', fewest: 5, expected: { 10: 0.022, 15: 0.048, 20: 0.07, 40: 0.146 } },
  { name: 'false alarms, ordinary 95 % t at each look', different: {}, judge: 'ordinary t', fewest: 3, expected: { 10: 0.184, 15: 0.195, 20: 0.206 } },
  { name: '1.0 SD found', different: { shift: 1 }, judge: 'this rule', fewest: 3, expected: { 10: 0.49, 15: 0.66, 20: 0.77 } },
  { name: '1.5 SD found', different: { shift: 1.5 }, judge: 'this rule', fewest: 3, expected: { 10: 0.9, 15: 0.97, 20: 0.99 } },
  { name: '2.0 SD found', different: { shift: 2 }, judge: 'this rule', fewest: 3, expected: { 10: 0.995, 15: 1, 20: 1 } },
];

/** The plain rule at α 0.05 against tables computed by other means, so that the study itself is checked. */
export function earlierTables(chance: Chance): Section {
  const judges = { 'this rule': pooledOnly(ALPHA), 'ordinary t': ordinaryT() };
  const played = LINES.flatMap(({ name, different, judge, fewest, expected }) =>
    Object.entries(expected).map(([countA, told]) => {
      const cell = { name: `${name}, n0 ${countA}`, order: thenB(Number(countA)), throwing: oneMeasure(different), judges: [judges[judge]], fewest };
      const found = anyClaim(play(cell, chance).claims[0]!);
      return { name: cell.name, told, found, agrees: agree(found, told) };
    }),
  );
  return {
    title: 'The study against tables computed by other means',
    about: ['The rule with the pooled variance alone at α 0.05, looks from the third throw of B (from the fifth where B scatters twice as much), in percent; the tables were computed with SciPy. They agree within the rounding of the tables and four standard errors of both.'],
    header: ['what', 'here', 'table', 'agrees'],
    rows: played.map(({ name, told, found, agrees }) => [name, percent(found), (100 * told).toFixed(1), agrees ? 'yes' : 'no']),
    missed: played.filter(({ agrees }) => !agrees).map(({ name, told, found }) => `${name}: ${percent(found)} % where the table has ${(100 * told).toFixed(1)} %.`),
  };
}

/** Half of the last digit of the table, which is 0.01 for the power and 0.001 (0.002 where a range stood) for false alarms. */
function agree(found: Share, told: number): boolean {
  const rounding = told >= 0.4 ? 0.005 : 0.001;
  const toldError = Math.sqrt((told * (1 - told)) / EARLIER_RUNS);
  return Math.abs(found.share - told) <= rounding + 4 * Math.hypot(found.error, toldError);
}
