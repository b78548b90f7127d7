import type { Pair } from './covariance.ts';

/** How pairs lie about an aim, in their unit. */
export interface RadialErrors {
  /** Mean distance from the aim. */
  readonly meanRadial: number;
  /** Distance of their centre from the aim. */
  readonly centreOffset: number;
  /** √ of the mean squared distance from their own centre. Divides by n, so it is small for few throws. */
  readonly bivariateVariable: number;
}

/**
 * Radial measures of accuracy; null without a pair.
 *
 * Hancock, Butler & Fischman, Journal of Motor Behavior 27:241 (1995), from memory.
 */
export function radialErrors(pairs: readonly Pair[], aim: Pair): RadialErrors | null {
  const count = pairs.length;
  if (count === 0) return null;
  const mean = (of: (pair: Pair) => number): number => pairs.reduce((sum, pair) => sum + of(pair), 0) / count;
  const centre: Pair = [mean(([x]) => x), mean(([, y]) => y)];
  const from = (point: Pair) => ([x, y]: Pair): number => Math.hypot(x - point[0], y - point[1]);
  return {
    meanRadial: mean(from(aim)),
    centreOffset: from(aim)(centre),
    bivariateVariable: Math.sqrt(mean((pair) => from(centre)(pair) ** 2)),
  };
}
