/** Small dense linear algebra, row by row; meant for 3×3 and 6×6. */

export type Matrix = readonly (readonly number[])[];

/**
 * Solves A·X = B for all columns of B by Gaussian elimination with partial pivoting.
 *
 * @throws RangeError when A is not square, the sizes differ or A is singular to working accuracy
 */
export function solveLinear(a: Matrix, b: Matrix): number[][] {
  const size = a.length;
  if (size === 0 || a.some((row) => row.length !== size) || b.length !== size) {
    throw new RangeError(
      `solveLinear: the matrix must be square with as many right-hand rows, got ${size} and ${b.length}`,
    );
  }
  const rows = a.map((row, i) => [...row, ...(b[i] ?? [])]);
  const scale = Math.max(...a.flat().map(Math.abs));
  for (let column = 0; column < size; column++) {
    const pivotRow = takePivot(rows, column);
    const pivot = pivotRow[column] ?? 0;
    if (!(Math.abs(pivot) > scale * 1e-300)) throw new RangeError("solveLinear: the matrix is singular");
    for (const row of rows) {
      if (row === pivotRow) continue;
      subtract(row, pivotRow, (row[column] ?? 0) / pivot, column);
    }
  }
  return rows.map((row, i) => row.slice(size).map((value) => value / (row[i] ?? 1)));
}

/** Moves the row with the largest entry in `column`, among those not yet used, to the place of the pivot. */
function takePivot(rows: number[][], column: number): number[] {
  let best = column;
  for (let i = column + 1; i < rows.length; i++) {
    if (Math.abs(rows[i]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = i;
  }
  const chosen = rows[best] ?? [];
  rows[best] = rows[column] ?? [];
  rows[column] = chosen;
  return chosen;
}

function subtract(row: number[], other: readonly number[], factor: number, from: number): void {
  if (factor === 0) return;
  for (let j = from; j < row.length; j++) row[j] = (row[j] ?? 0) - factor * (other[j] ?? 0);
}

/** Inverse of a square matrix. @throws RangeError as {@link solveLinear}. */
export function invert(a: Matrix): number[][] {
  return solveLinear(
    a,
    a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0))),
  );
}
