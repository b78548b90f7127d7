import { expect, it } from 'vitest';
import { randomFrom } from '../../simulators/random.ts';
import { mean, standardDeviation } from './throwing.ts';

it('the same seed and name give the same chance, another seed or name another', () => {
  const row = (seed: number, name: string): number[] => {
    const random = randomFrom(seed, name);
    return Array.from({ length: 5 }, () => random.uniform());
  };
  expect(row(1, 'throw')).toEqual(row(1, 'throw'));
  expect(row(1, 'throw')).not.toEqual(row(2, 'throw'));
  expect(row(1, 'throw')).not.toEqual(row(1, 'measure'));
});

it('normal numbers have the mean, the spread and the tails that they should', () => {
  const random = randomFrom(7, 'normal');
  const numbers = Array.from({ length: 20_000 }, () => random.normal());
  expect(Math.abs(mean(numbers))).toBeLessThan(4 / Math.sqrt(20_000));
  expect(Math.abs(standardDeviation(numbers) - 1)).toBeLessThan(4 / Math.sqrt(40_000));
  // Beyond 1.96 lie 5 %, give or take four standard errors.
  expect(Math.abs(numbers.filter((one) => Math.abs(one) > 1.96).length / 20_000 - 0.05)).toBeLessThan(0.0062);
});
