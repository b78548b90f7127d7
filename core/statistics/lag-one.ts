import { tallyOf } from './tally.ts';

/**
 * Autocorrelation of neighbours: how much a value resembles the one before it, −1 to 1. Null under three values and when
 * all are equal. The definition of NIST's Statistical Reference Datasets: Σ(xᵢ−m)(xᵢ₊₁−m)/Σ(xᵢ−m)².
 */
export function lagOneAutocorrelation(values: readonly number[]): number | null {
  const { count, mean, squares } = tallyOf(values);
  if (count < 3 || squares === 0) return null;
  let products = 0;
  for (let i = 1; i < count; i += 1) products += (values[i - 1]! - mean) * (values[i]! - mean);
  return products / squares;
}
