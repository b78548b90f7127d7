import { describe, expect, it } from 'vitest';
import { lagOneAutocorrelation } from '../../core/statistics/lag-one.ts';
import { moments } from '../../core/statistics/moments.ts';

// Published: NIST Statistical Reference Datasets, univariate summary statistics, with the certified mean and standard
// deviation (n − 1). Mavro: filter transmittance, R. Mavrodineaunu. Michelso: speed of light in air, Michelson 1879, in
// Dorsey, Transactions of the American Philosophical Society 34 (1944), table 22. NumAcc1, 3 and 4 are constructed.

const mavro = `
2.00180 2.00170 2.00180 2.00190 2.00180 2.00170 2.00150 2.00140 2.00150 2.00150
2.00170 2.00180 2.00180 2.00190 2.00190 2.00210 2.00200 2.00160 2.00140 2.00130
2.00130 2.00150 2.00150 2.00160 2.00150 2.00140 2.00130 2.00140 2.00150 2.00140
2.00150 2.00160 2.00150 2.00160 2.00190 2.00200 2.00200 2.00210 2.00220 2.00230
2.00240 2.00250 2.00270 2.00260 2.00260 2.00260 2.00270 2.00260 2.00250 2.00240`;

const michelso = `
299.85 299.74 299.90 300.07 299.93 299.85 299.95 299.98 299.98 299.88
300.00 299.98 299.93 299.65 299.76 299.81 300.00 300.00 299.96 299.96
299.96 299.94 299.96 299.94 299.88 299.80 299.85 299.88 299.90 299.84
299.83 299.79 299.81 299.88 299.88 299.83 299.80 299.79 299.76 299.80
299.88 299.88 299.88 299.86 299.72 299.72 299.62 299.86 299.97 299.95
299.88 299.91 299.85 299.87 299.84 299.84 299.85 299.84 299.84 299.84
299.89 299.81 299.81 299.82 299.80 299.77 299.76 299.74 299.75 299.76
299.91 299.92 299.89 299.86 299.88 299.72 299.84 299.85 299.85 299.78
299.89 299.84 299.78 299.81 299.76 299.81 299.79 299.81 299.82 299.85
299.87 299.87 299.81 299.74 299.81 299.94 299.95 299.80 299.81 299.87`;

const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);
const swinging = (first: number, low: number, high: number): number[] =>
  [first, ...Array.from({ length: 500 }, () => [low, high]).flat()];

const sets = [
  { name: 'Mavro', values: numbers(mavro), count: 50, mean: 2.001856, sd: 0.000429123454003053, relative: 1e-11 },
  { name: 'Michelso', values: numbers(michelso), count: 100, mean: 299.8524, sd: 0.0790105478190518, relative: 1e-12 },
  { name: 'NumAcc1', values: [10000001, 10000003, 10000002], count: 3, mean: 10000002, sd: 1, relative: 0 },
  // What is left in these two is the rounding of the decimals themselves to binary.
  { name: 'NumAcc3', values: swinging(1000000.2, 1000000.1, 1000000.3), count: 1001, mean: 1000000.2, sd: 0.1, relative: 1e-9 },
  { name: 'NumAcc4', values: swinging(10000000.2, 10000000.1, 10000000.3), count: 1001, mean: 10000000.2, sd: 0.1, relative: 1e-7 },
];

describe('mean and standard deviation reach the certified values of NIST', () => {
  it.each(sets)('$name', ({ values, count, mean, sd, relative }) => {
    const found = moments(values);
    expect(found?.count).toBe(count);
    expect(Math.abs(found!.mean - mean)).toBeLessThanOrEqual(mean * 1e-15);
    expect(Math.abs(found!.sd! - sd)).toBeLessThanOrEqual(sd * relative);
    expect(found!.standardErrorOfMean).toBe(found!.sd! / Math.sqrt(count));
  });
});

// Published: the same certified values.
it.each([
  ['Mavro', 0.937989183438248],
  ['Michelso', 0.535199668621283],
])('the neighbours in %s resemble each other by the certified %f', (name, certified) => {
  const { values } = sets.find((set) => set.name === name)!;
  expect(Math.abs(lagOneAutocorrelation(values)! / certified - 1)).toBeLessThan(1e-11);
});
