import { expect, test } from 'vitest';
import { between, factor, inverseOf, solveFactored } from '../../../core/flight/normal-equations.ts';
import { seeded } from './noise.ts';

const size = 9;

test('the inverse of a normal matrix times the matrix is one, and solving agrees with it', () => {
  const { normal } = seeded(4);
  const root = Float64Array.from({ length: size * size }, normal);
  const matrix = Float64Array.from({ length: size * size }, (_, at) => {
    const [row, column] = [Math.floor(at / size), at % size];
    let sum = row === column ? 1 : 0;
    for (let k = 0; k < size; k += 1) sum += root[row * size + k]! * root[column * size + k]!;
    return sum;
  });
  const factored = matrix.slice();
  expect(factor(factored, size)).toBe(true);
  const inverse = inverseOf(factored, size);
  const unit = (at: number): Float64Array => Float64Array.from({ length: size }, (_, i) => Number(i === at));
  for (let row = 0; row < size; row += 1) {
    const solved = matrix.slice(row * size, (row + 1) * size);
    solveFactored(factored, size, solved);
    for (let column = 0; column < size; column += 1) {
      expect(solved[column]).toBeCloseTo(Number(row === column), 10);
      expect(between(unit(row), inverse, matrix.slice(column * size, (column + 1) * size), size)).toBeCloseTo(Number(row === column), 10);
    }
  }
});

test('a matrix that is as good as singular has no factor', () => {
  const matrix = Float64Array.from({ length: 4 }, () => 3);
  expect(factor(matrix, 2)).toBe(false);
  expect(factor(Float64Array.of(Number.NaN, 0, 0, 1), 2)).toBe(false);
});
