import type { Estimate, Reading, SeparationView, ShareView, SpreadView, WindowView } from '../facts/views.ts';
import { covarianceOf, NO_PAIRS, pairTallyWith, type PairTally } from '../statistics/covariance.ts';
import { areaInterval95, ellipseAbout } from '../statistics/ellipse.ts';
import { NO_VALUES, tallyWith, type Tally } from '../statistics/tally.ts';
import { wilsonInterval } from '../statistics/wilson.ts';
import { summaryOf } from '../statistics/window.ts';

const WINDOW_SIZES = [3, 5, 10, 'all'] as const;
/** Fewest throws for a number of each kind. House rule: a mean of two and an ellipse of four say nothing. */
const FEWEST_FOR_MEAN = 3;
export const FEWEST_FOR_SPREAD = 5;

/** What a window needs of one throw of the trial. */
export interface WindowThrow {
  readonly separation: SeparationView;
  readonly miss: { readonly onTarget: boolean; readonly size: number } | null;
}

/** So many of the newest throws are all that a window other than `all` looks at. */
export const WINDOW_LOOKS_AT = 10;

/** What is kept of throws for a window over them. */
export interface WindowSums {
  readonly count: number;
  readonly speedMps: Tally;
  readonly verticalM: Tally;
  readonly armSideM: Tally;
  readonly arrivalS: Tally;
  /** Arm side and vertical, of those that have both. */
  readonly pairs: PairTally;
  readonly miss: Tally;
  readonly hits: number;
}
export const NO_WINDOW: WindowSums = { count: 0, speedMps: NO_VALUES, verticalM: NO_VALUES, armSideM: NO_VALUES, arrivalS: NO_VALUES, pairs: NO_PAIRS, miss: NO_VALUES, hits: 0 };

/** One throw more. */
export function withWindowThrow(sums: WindowSums, { separation, miss }: WindowThrow): WindowSums {
  const { verticalM, armSideM } = separation;
  const more = (measure: 'speedMps' | 'verticalM' | 'armSideM' | 'arrivalS'): Tally => withReading(sums[measure], separation[measure]);
  return {
    count: sums.count + 1,
    speedMps: more('speedMps'), verticalM: more('verticalM'), armSideM: more('armSideM'), arrivalS: more('arrivalS'),
    pairs: typeof armSideM === 'number' && typeof verticalM === 'number' ? pairTallyWith(sums.pairs, [armSideM, verticalM]) : sums.pairs,
    miss: miss === null ? sums.miss : tallyWith(sums.miss, miss.size),
    hits: sums.hits + (miss?.onTarget === true ? 1 : 0),
  };
}

function withReading(tally: Tally, reading: Reading): Tally {
  return typeof reading === 'number' ? tallyWith(tally, reading) : tally;
}

/** The windows over the throws of one trial in one stage, oldest throw first, excluded ones left out. */
export function windowsOver(thrown: readonly WindowThrow[], hasZone: boolean): WindowView[] {
  return windowsOf(thrown.reduce(withWindowThrow, NO_WINDOW), thrown.slice(-WINDOW_LOOKS_AT), hasZone);
}

/** The same from the sums over all of them and the newest, oldest first. */
export function windowsOf(all: WindowSums, newest: readonly WindowThrow[], hasZone: boolean): WindowView[] {
  return WINDOW_SIZES.map((size) => windowOver(size, size === 'all' ? all : newest.slice(-size).reduce(withWindowThrow, NO_WINDOW), hasZone));
}

function windowOver(size: WindowView['size'], sums: WindowSums, hasZone: boolean): WindowView {
  const need = size === 'all' ? FEWEST_FOR_MEAN : size;
  return {
    size,
    count: sums.count,
    speedMps: estimate(sums.speedMps, need),
    verticalM: estimate(sums.verticalM, need),
    armSideM: estimate(sums.armSideM, need),
    arrivalS: estimate(sums.arrivalS, need),
    spread: spreadOf(sums.pairs, Math.max(need, FEWEST_FOR_SPREAD)),
    onTarget: shareOf(sums, need, hasZone),
    meanMiss: estimate(sums.miss, need),
  };
}

function estimate(known: Tally, need: number): Estimate {
  if (known.count < need) return { kind: 'too-few', count: known.count, need };
  const summary = summaryOf(known);
  if (summary.kind === 'too-few') return { kind: 'too-few', count: summary.count, need: summary.need };
  return { kind: 'estimate', mean: summary.mean, low: summary.low, high: summary.high, count: summary.count };
}

function spreadOf(pairs: PairTally, need: number): SpreadView {
  const { count } = pairs.x;
  const found = count < need ? null : ellipseAbout('throws', covarianceOf(pairs));
  const area = found === null ? null : areaInterval95(found.area, count);
  if (found === null || area === null) return { kind: 'too-few', count, need: Math.max(need, count + (count < need ? 0 : 1)) };
  const { centre, semiMajor, semiMinor, angleRad } = found;
  return {
    kind: 'ellipse', armSideM: centre[0], verticalM: centre[1], semiMajorM: semiMajor, semiMinorM: semiMinor, angleRad,
    areaM2: found.area, areaLowM2: area.low, areaHighM2: area.high, count,
  };
}

function shareOf({ miss: { count }, hits }: WindowSums, need: number, hasZone: boolean): ShareView {
  if (!hasZone) return { kind: 'no-zone' };
  if (count < need) return { kind: 'too-few', count, need };
  const { low, high } = wilsonInterval(hits, count)!;
  return { kind: 'share', hits, count, low, high };
}
