/** Something that wants to stand at a height and takes up room below and above it. */
export interface Wish {
  readonly at: number;
  readonly size: number;
}

/**
 * Middles of labels on one vertical line, in the order given, moved apart just enough not to touch and kept between `low`
 * and `high`. The first in the order has the right of way.
 */
export function dodge(wishes: readonly Wish[], low: number, high: number): number[] {
  const placed: { readonly at: number; readonly size: number }[] = [];
  return wishes.map(({ at, size }) => {
    const fits = (middle: number): boolean =>
      middle - size / 2 >= low - 1e-9 && middle + size / 2 <= high + 1e-9 && placed.every((other) => Math.abs(other.at - middle) >= (other.size + size) / 2 - 1e-9);
    const tries = [at, low + size / 2, high - size / 2, ...placed.flatMap((other) => [other.at - (other.size + size) / 2, other.at + (other.size + size) / 2])];
    const best = tries.filter(fits).sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0] ?? Math.max(low + size / 2, Math.min(high - size / 2, at));
    placed.push({ at: best, size });
    return best;
  });
}
