import { randomFrom } from '../../simulators/random.ts';
import { shareOf, type Share } from '../share.ts';
import { firstClaims, glanceSaysBetter, type FirstClaim } from './evening.ts';
import type { Judge } from './judge.ts';
import type { Order } from './order.ts';
import type { Throwing } from './throwing.ts';

/** Many evenings of one kind. */
export interface Cell {
  readonly name: string;
  readonly order: Order;
  readonly throwing: Throwing;
  readonly judges: readonly Judge[];
  /** Throws of each trial before the first look. */
  readonly fewest: number;
}

export interface Chance {
  readonly seeds: readonly number[];
  readonly runsPerSeed: number;
}

/** What one judge claimed over all evenings. */
export interface Claims {
  readonly runs: number;
  readonly better: number;
  readonly worse: number;
  /** Evenings on which `better` was claimed, by the number of throws of B it took. */
  readonly betterByCountB: readonly number[];
  /** Mean over the claims of `better`; NaN without one. */
  readonly difference: number;
  readonly shrunken: number;
}

export interface Outcome {
  readonly name: string;
  readonly runs: number;
  /** In the order of the judges. */
  readonly claims: readonly Claims[];
  readonly glanceBetter: number;
}

interface Counting {
  better: number;
  worse: number;
  readonly betterByCountB: number[];
  difference: number;
  shrunken: number;
}

/** Plays a cell; the same seeds give the same outcome to the last evening. */
export function play(cell: Cell, { seeds, runsPerSeed }: Chance): Outcome {
  const values = new Float64Array(cell.order.length);
  const counting = cell.judges.map((): Counting => ({ better: 0, worse: 0, betterByCountB: [], difference: 0, shrunken: 0 }));
  let glanceBetter = 0;
  for (const seed of seeds) {
    const random = randomFrom(seed, cell.name);
    for (let run = 0; run < runsPerSeed; run += 1) {
      cell.throwing(random, cell.order, values);
      firstClaims(cell.order, values, cell.judges, cell.fewest).forEach((claim, judge) => count(counting[judge]!, claim));
      if (glanceSaysBetter(cell.order, values)) glanceBetter += 1;
    }
  }
  const runs = seeds.length * runsPerSeed;
  return { name: cell.name, runs, claims: counting.map((one) => claimsOf(one, runs)), glanceBetter };
}

function count(counting: Counting, claim: FirstClaim | null): void {
  if (claim === null) return;
  counting[claim.kind] += 1;
  if (claim.kind === 'worse') return;
  counting.betterByCountB[claim.countB] = (counting.betterByCountB[claim.countB] ?? 0) + 1;
  counting.difference += claim.difference;
  counting.shrunken += claim.shrunken;
}

const claimsOf = ({ better, worse, betterByCountB, difference, shrunken }: Counting, runs: number): Claims => ({
  runs,
  better,
  worse,
  betterByCountB: Array.from(betterByCountB, (evenings) => evenings ?? 0),
  difference: difference / better,
  shrunken: shrunken / better,
});

/** Share of evenings with any claim: false alarms where nothing differs. */
export const anyClaim = ({ better, worse, runs }: Claims): Share => shareOf(better + worse, runs);

/** Share of evenings on which `better` was claimed by that many throws of B. */
export const foundWithin = ({ betterByCountB, runs }: Claims, countB: number): Share =>
  shareOf(betterByCountB.slice(0, countB + 1).reduce((sum, evenings) => sum + evenings, 0), runs);

/** Throws of B in the middle one of the evenings that claimed `better`; null where none did. */
export function middleCountB({ betterByCountB, better }: Claims): number | null {
  let seen = 0;
  const middle = betterByCountB.findIndex((evenings) => (seen += evenings) * 2 >= better);
  return better === 0 ? null : middle;
}
