/** The middle value, or halfway between the two middle ones. Null when there are no values; they must be finite. */
export function median(values: readonly number[]): number | null {
  return medianOfSorted(Float64Array.from(values).sort());
}

/**
 * Hodges–Lehmann centre: the median of the means of all pairs, each value paired with itself too. One slip among few
 * throws hardly moves it, and on clean throws it scatters almost as little as the mean. Null when there are no values.
 *
 * Hodges & Lehmann, Annals of Mathematical Statistics 34:598 (1963).
 */
export function hodgesLehmann(values: readonly number[]): number | null {
  const count = values.length;
  const pairMeans = new Float64Array((count * (count + 1)) / 2);
  let next = 0;
  values.forEach((a, i) => {
    for (let j = i; j < count; j += 1) pairMeans[next++] = halfway(a, values[j]!);
  });
  return medianOfSorted(pairMeans.sort());
}

function medianOfSorted(sorted: Float64Array): number | null {
  const upper = sorted[sorted.length >> 1];
  if (upper === undefined) return null;
  return sorted.length % 2 === 1 ? upper : halfway(sorted[(sorted.length >> 1) - 1]!, upper);
}

const halfway = (a: number, b: number): number => a + (b - a) / 2;
