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
