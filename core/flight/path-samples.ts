import type { Vector } from './vector.ts';

/** One place of a ball at one time, on any clock. */
export interface PathSample {
  readonly timeS: number;
  readonly positionM: Vector;
}

/** Samples as columns, their times counted from their mean, which keeps the fits well conditioned. */
export interface Columns {
  readonly count: number;
  readonly middleS: number;
  readonly times: Float64Array;
  readonly places: readonly [Float64Array, Float64Array, Float64Array];
}

export function columnsOf(samples: readonly PathSample[]): Columns {
  const count = samples.length;
  const [times, x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)] as const;
  let middleS = 0;
  for (const { timeS } of samples) middleS += timeS / count;
  for (let i = 0; i < count; i += 1) {
    const { timeS, positionM } = samples[i]!;
    times[i] = timeS - middleS;
    x[i] = positionM[0];
    y[i] = positionM[1];
    z[i] = positionM[2];
  }
  return { count, middleS, times, places: [x, y, z] };
}

/** The first and the last time of the samples that count; of none, Infinity and −Infinity. */
export function spanOf(times: Float64Array, counts?: Uint8Array): { firstS: number; lastS: number } {
  let firstS = Infinity;
  let lastS = -Infinity;
  for (let i = 0; i < times.length; i += 1) {
    if (counts !== undefined && counts[i] === 0) continue;
    firstS = Math.min(firstS, times[i]!);
    lastS = Math.max(lastS, times[i]!);
  }
  return { firstS, lastS };
}
