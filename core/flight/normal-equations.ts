/**
 * Symmetric positive definite matrices of a size, row by row in one array, by Cholesky's factors. Written here because a fit
 * factors one of nine rows a few times in a tenth of a millisecond, without allocating.
 */

/** Overwrites the lower triangle of `matrix` (which must be filled) with its factor L, L·Lᵀ = matrix. False where it is as good as singular. */
export function factor(matrix: Float64Array, size: number): boolean {
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column]!;
      const whole = sum;
      for (let k = 0; k < column; k += 1) sum -= matrix[row * size + k]! * matrix[column * size + k]!;
      if (row === column) {
        if (!(sum > 1e-12 * whole)) return false;
        matrix[row * size + row] = Math.sqrt(sum);
      } else {
        matrix[row * size + column] = sum / matrix[column * size + column]!;
      }
    }
  }
  return true;
}

/** Solves L·Lᵀ·x = b in place of b. */
export function solveFactored(factored: Float64Array, size: number, b: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    let sum = b[row]!;
    for (let k = 0; k < row; k += 1) sum -= factored[row * size + k]! * b[k]!;
    b[row] = sum / factored[row * size + row]!;
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = b[row]!;
    for (let k = row + 1; k < size; k += 1) sum -= factored[k * size + row]! * b[k]!;
    b[row] = sum / factored[row * size + row]!;
  }
}

/** The inverse of a factored matrix: the covariance where the matrix is the normal matrix of a fit. */
export function inverseOf(factored: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  const column = new Float64Array(size);
  for (let of = 0; of < size; of += 1) {
    column.fill(0);
    column[of] = 1;
    solveFactored(factored, size, column);
    for (let row = 0; row < size; row += 1) inverse[row * size + of] = column[row]!;
  }
  return inverse;
}

/** aᵀ·matrix·b: the covariance of two numbers with these gradients. */
export function between(a: ArrayLike<number>, matrix: Float64Array, b: ArrayLike<number>, size: number): number {
  let sum = 0;
  for (let row = 0; row < size; row += 1) {
    let right = 0;
    for (let column = 0; column < size; column += 1) right += matrix[row * size + column]! * b[column]!;
    sum += a[row]! * right;
  }
  return sum;
}
