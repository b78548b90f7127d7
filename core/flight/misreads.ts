/** Below this a path through noiseless samples would reject its own rounding. */
const finestNoiseM = 0.0005;
const deviationsPerMad = 1.4826;

/** Residuals of each axis, sample by sample, and how far each sample lies off the path in all. */
export interface Residuals {
  readonly axes: readonly [Float64Array, Float64Array, Float64Array];
  /** Squared distance of each sample, in robust standard deviations of each axis. */
  readonly squares: Float64Array;
  readonly scratch: Float64Array;
}

export function residualsFor(count: number): Residuals {
  const column = (): Float64Array => new Float64Array(count);
  return { axes: [column(), column(), column()], squares: column(), scratch: column() };
}

/** Writes `squares`; the standard deviation of an axis is told from its median absolute deviation, which half the samples cannot spoil. */
export function measureDistances({ axes, squares, scratch }: Residuals): void {
  const count = squares.length;
  const freedom = Math.sqrt(count / Math.max(1, count - 3));
  squares.fill(0);
  for (const axis of axes) {
    for (let i = 0; i < count; i += 1) scratch[i] = Math.abs(axis[i]!);
    const perScale = 1 / Math.max(finestNoiseM, deviationsPerMad * freedom * ranked(scratch, count >> 1));
    for (let i = 0; i < count; i += 1) {
      const off = axis[i]! * perScale;
      squares[i] = squares[i]! + off * off;
    }
  }
}

/** The value that would stand at `rank` if the values were sorted; reorders them (Hoare's selection, which costs a quarter of sorting). */
function ranked(values: Float64Array, rank: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[rank]!;
    let up = low;
    let down = high;
    while (up <= down) {
      while (values[up]! < pivot) up += 1;
      while (values[down]! > pivot) down -= 1;
      if (up > down) break;
      const kept = values[up]!;
      values[up] = values[down]!;
      values[down] = kept;
      up += 1;
      down -= 1;
    }
    if (down < rank) low = up;
    if (up > rank) high = down;
  }
  return values[rank]!;
}
