import { NO_VALUES, tallyWith, type Tally } from './tally.ts';

/** Two measures of one throw in the same unit, say arm side and vertical. */
export type Pair = readonly [x: number, y: number];

export interface Covariance {
  readonly count: number;
  readonly centre: Pair;
  /** Variances and covariance, dividing by n − 1, in the square of the unit. */
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** Centre and covariance of finite pairs; null under two of them. Taken from the first pair, as `moments` does and for its reason. */
export function covariance(pairs: readonly Pair[]): Covariance | null {
  const count = pairs.length;
  const origin = pairs[0];
  if (origin === undefined || count < 2) return null;
  const meanX = meanOf(pairs, (pair) => pair[0] - origin[0]);
  const meanY = meanOf(pairs, (pair) => pair[1] - origin[1]);
  let [xx, yy, xy] = [0, 0, 0];
  for (const [x, y] of pairs) {
    const dx = x - origin[0] - meanX;
    const dy = y - origin[1] - meanY;
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  const df = count - 1;
  return { count, centre: [origin[0] + meanX, origin[1] + meanY], xx: xx / df, yy: yy / df, xy: xy / df };
}

function meanOf(pairs: readonly Pair[], measure: (pair: Pair) => number): number {
  let sum = 0;
  for (const pair of pairs) sum += measure(pair);
  return sum / pairs.length;
}

/** What is kept of pairs for their centre and covariance; a pair more never asks for those before. */
export interface PairTally {
  readonly x: Tally;
  readonly y: Tally;
  /** Sum of the products of the deviations from both means, in the square of the unit. */
  readonly products: number;
}
export const NO_PAIRS: PairTally = { x: NO_VALUES, y: NO_VALUES, products: 0 };

/** One pair more, as `tallyWith` takes one value more. */
export function pairTallyWith({ x, y, products }: PairTally, [nextX, nextY]: Pair): PairTally {
  const nowY = tallyWith(y, nextY);
  return { x: tallyWith(x, nextX), y: nowY, products: products + (nextX - x.mean) * (nextY - nowY.mean) };
}

/** Centre and covariance of pairs that were tallied; null under two of them. */
export function covarianceOf({ x, y, products }: PairTally): Covariance | null {
  if (x.count < 2) return null;
  const df = x.count - 1;
  return { count: x.count, centre: [x.mean, y.mean], xx: x.squares / df, yy: y.squares / df, xy: products / df };
}
