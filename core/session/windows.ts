import type { Estimate, Reading, SeparationView, ShareView, SpreadView, WindowView } from '../facts/views.ts';
import { areaInterval95, ellipse } from '../statistics/ellipse.ts';
import { wilsonInterval } from '../statistics/wilson.ts';
import { summarise } from '../statistics/window.ts';

const WINDOW_SIZES = [3, 5, 10, 'all'] as const;
/** Fewest throws for a number of each kind. House rule: a mean of two and an ellipse of four say nothing. */
const FEWEST_FOR_MEAN = 3;
export const FEWEST_FOR_SPREAD = 5;

/** What a window needs of one throw of the trial. */
export interface WindowThrow {
  readonly separation: SeparationView;
  readonly miss: { readonly onTarget: boolean; readonly size: number } | null;
}

/** The windows over the throws of one trial in one stage, oldest throw first, excluded ones left out. */
export function windowsOver(thrown: readonly WindowThrow[], hasZone: boolean): WindowView[] {
  return WINDOW_SIZES.map((size) => windowOver(size, size === 'all' ? thrown : thrown.slice(-size), hasZone));
}

function windowOver(size: WindowView['size'], thrown: readonly WindowThrow[], hasZone: boolean): WindowView {
  const need = size === 'all' ? FEWEST_FOR_MEAN : size;
  const of = (pick: (separation: SeparationView) => Reading): Estimate => estimate(thrown.map(({ separation }) => pick(separation)), need);
  return {
    size,
    count: thrown.length,
    speedMps: of((separation) => separation.speedMps),
    verticalM: of((separation) => separation.verticalM),
    armSideM: of((separation) => separation.armSideM),
    arrivalS: of((separation) => separation.arrivalS),
    spread: spreadOf(thrown, Math.max(need, FEWEST_FOR_SPREAD)),
    onTarget: shareOf(thrown, need, hasZone),
    meanMiss: estimate(thrown.flatMap(({ miss }) => (miss === null ? [] : [miss.size])), need),
  };
}

function estimate(readings: readonly Reading[], need: number): Estimate {
  const known = readings.filter((reading) => typeof reading === 'number');
  if (known.length < need) return { kind: 'too-few', count: known.length, need };
  const summary = summarise(known);
  if (summary.kind === 'too-few') return { kind: 'too-few', count: summary.count, need: summary.need };
  return { kind: 'estimate', mean: summary.mean, low: summary.low, high: summary.high, count: summary.count };
}

function spreadOf(thrown: readonly WindowThrow[], need: number): SpreadView {
  const pairs = thrown.flatMap(({ separation: { armSideM, verticalM } }) =>
    typeof armSideM === 'number' && typeof verticalM === 'number' ? [[armSideM, verticalM] as const] : []);
  const found = pairs.length < need ? null : ellipse('throws', pairs);
  const area = found === null ? null : areaInterval95(found.area, pairs.length);
  if (found === null || area === null) return { kind: 'too-few', count: pairs.length, need: Math.max(need, pairs.length + (pairs.length < need ? 0 : 1)) };
  const { centre, semiMajor, semiMinor, angleRad } = found;
  return {
    kind: 'ellipse', armSideM: centre[0], verticalM: centre[1], semiMajorM: semiMajor, semiMinorM: semiMinor, angleRad,
    areaM2: found.area, areaLowM2: area.low, areaHighM2: area.high, count: pairs.length,
  };
}

function shareOf(thrown: readonly WindowThrow[], need: number, hasZone: boolean): ShareView {
  if (!hasZone) return { kind: 'no-zone' };
  const judged = thrown.flatMap(({ miss }) => (miss === null ? [] : [miss.onTarget]));
  if (judged.length < need) return { kind: 'too-few', count: judged.length, need };
  const hits = judged.filter(Boolean).length;
  const { low, high } = wilsonInterval(hits, judged.length)!;
  return { kind: 'share', hits, count: judged.length, low, high };
}
