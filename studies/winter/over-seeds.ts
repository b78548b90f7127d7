import { tQuantile975 } from '../../core/statistics/t-quantile.ts';

/** A mean over seeds with its 95 % interval. */
export interface OverSeeds {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** Student's t over the seeds, one number each; two seeds at least. */
export function overSeeds(values: readonly number[]): OverSeeds {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  const radius = tQuantile975(values.length - 1) * Math.sqrt(variance / values.length);
  return { mean, low: mean - radius, high: mean + radius };
}

/** Mean over the athletes of each seed. */
export const perSeed = <One>(seasons: readonly (readonly One[])[], of: (one: One) => number): number[] =>
  seasons.map((winters) => winters.reduce((sum, winter) => sum + of(winter), 0) / winters.length);

/** A share as percent. */
export const inPercent = ({ mean, low, high }: OverSeeds): OverSeeds => ({ mean: 100 * mean, low: 100 * low, high: 100 * high });

/** "78.3 (75.8 to 80.8)". */
export const intervalText = ({ mean, low, high }: OverSeeds, digits: number): string => `${mean.toFixed(digits)} (${low.toFixed(digits)} to ${high.toFixed(digits)})`;

const MOST = 1000;

/**
 * The ratio of two means over the same seeds with its 95 % interval (Fieller, J. R. Stat. Soc. B 16:175, 1954; from memory): all
 * ratios for which the mean of a − ratio·b is not told from nothing. `high` is 1000 where b is not told from nothing.
 */
export function ratioOverSeeds(a: readonly number[], b: readonly number[]): OverSeeds {
  const held = (ratio: number): OverSeeds => overSeeds(a.map((value, seed) => value - ratio * b[seed]!));
  const mean = overSeeds(a).mean / overSeeds(b).mean;
  return { mean, low: edge((ratio) => held(ratio).low > 0), high: edge((ratio) => held(ratio).high >= 0) };
}

/** The largest ratio up to which something holds. */
function edge(holds: (ratio: number) => boolean): number {
  if (holds(MOST)) return MOST;
  let [low, high] = [0, MOST];
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
