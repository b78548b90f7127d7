import { median } from './centre.ts';

/** Under five values half of them decide alone; no factor makes that a spread. It is also where a fastball baseline forms. */
const LEAST_COUNT = 5;

/**
 * What the median absolute deviation of n normal values must be multiplied by to estimate their SD without bias, n = 5…30.
 * Park, Kim & Wang, arXiv 1908.00462, table A2, as quoted by Akinshin, arXiv 2207.12005 (2022); rounded to five places.
 */
const FACTORS: readonly number[] = [
  1.80393, 1.76379, 1.68681, 1.67184, 1.63294, 1.62468, 1.60131, 1.59615, 1.58075, 1.57727, 1.56634, 1.56377, 1.55528,
  1.55337, 1.54721, 1.54571, 1.54068, 1.5393, 1.53517, 1.53405, 1.53052, 1.53, 1.52692, 1.52642, 1.52361, 1.52303,
];

/** Φ⁻¹(3/4): the median absolute deviation of a normal variable with SD 1. */
const NORMAL_MAD = 0.6744897501960817;

/** Median of the distances from the median, as it is: no factor. Null when there are no values. */
export function medianAbsoluteDeviation(values: readonly number[]): number | null {
  const middle = median(values);
  return middle === null ? null : median(values.map((value) => Math.abs(value - middle)));
}

/**
 * Robust spread on the scale of an SD, unbiased for normal throws at any count from five; null under five.
 * It is 0 when more than half of the values are equal: the caller must not divide by it unseen.
 * Without the small-sample factor it would read 0.83 of the SD at five throws.
 */
export function correctedMad(values: readonly number[]): number | null {
  if (values.length < LEAST_COUNT) return null;
  const deviation = medianAbsoluteDeviation(values);
  return deviation === null ? null : deviation * factor(values.length);
}

/** Above the table: Hayes, Communications in Statistics – Simulation and Computation 43:2205 (2014). */
function factor(count: number): number {
  const tabulated = FACTORS[count - LEAST_COUNT];
  if (tabulated !== undefined) return tabulated;
  const [alpha, beta] = count % 2 === 1 ? [0.7635, 0.565] : [0.7612, 1.123];
  return 1 / (NORMAL_MAD * (1 - alpha / count - beta / count ** 2));
}
