/** Solves the symmetric positive system `matrix` · x = `right` (Cholesky, row by row); null where it is none. */
export function solveSymmetric(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const n = right.length;
  const lower: number[][] = [];
  for (let row = 0; row < n; row += 1) {
    const made: number[] = [];
    for (let column = 0; column <= row; column += 1) {
      const other = column === row ? made : (lower[column] ?? []);
      const rest = (matrix[row]?.[column] ?? 0) - dot(made, other, column);
      if (column === row && !(rest > 0)) return null;
      made.push(column === row ? Math.sqrt(rest) : rest / (other[column] ?? 1));
    }
    lower.push(made);
  }
  const between: number[] = [];
  for (let row = 0; row < n; row += 1) {
    const made = lower[row] ?? [];
    between.push(((right[row] ?? 0) - dot(made, between, row)) / (made[row] ?? 1));
  }
  const x = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row -= 1) {
    let rest = between[row] ?? 0;
    for (let below = row + 1; below < n; below += 1) rest -= (lower[below]?.[row] ?? 0) * (x[below] ?? 0);
    x[row] = rest / (lower[row]?.[row] ?? 1);
  }
  return x;
}

function dot(one: readonly number[], other: readonly number[], count: number): number {
  let total = 0;
  for (let at = 0; at < count; at += 1) total += (one[at] ?? 0) * (other[at] ?? 0);
  return total;
}

/** Minimizes the sum of squares of rows · x − right. */
export function leastSquares(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const { matrix, gradient } = normalEquations(rows, right);
  return solveSymmetric(matrix, gradient);
}

function normalEquations(rows: readonly (readonly number[])[], right: readonly number[]) {
  const n = rows[0]?.length ?? 0;
  const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const gradient = new Array<number>(n).fill(0);
  rows.forEach((row, at) => {
    for (let i = 0; i < n; i += 1) {
      gradient[i] = (gradient[i] ?? 0) + (row[i] ?? 0) * (right[at] ?? 0);
      const line = matrix[i] ?? [];
      for (let j = 0; j < n; j += 1) line[j] = (line[j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0);
    }
  });
  return { matrix, gradient };
}

export type Fit = { readonly parameters: readonly number[]; readonly cost: number };

const mostRounds = 60;
const huber = 3;

/**
 * Levenberg–Marquardt with differences for the derivatives (Marquardt's scaling) and Huber's loss: a residual of more
 * than 3 counts by its size, not its square. `residuals` are in units of their own spread.
 */
export function fitted(
  residuals: (parameters: readonly number[]) => readonly number[],
  start: readonly number[],
): Fit {
  let best: Fit = { parameters: start, cost: lossOf(residuals(start)) };
  let damping = 1e-3;
  for (let round = 0; round < mostRounds && damping < 1e9; round += 1) {
    const step = stepFrom(residuals, best.parameters, damping);
    const tried = step && best.parameters.map((value, at) => value + (step[at] ?? 0));
    const cost = tried ? lossOf(residuals(tried)) : Number.POSITIVE_INFINITY;
    if (tried && cost < best.cost) {
      const gain = best.cost - cost;
      best = { parameters: tried, cost };
      damping /= 5;
      if (gain < 1e-9 * (1 + cost)) break;
    } else damping *= 4;
  }
  return best;
}

function stepFrom(
  residuals: (parameters: readonly number[]) => readonly number[],
  at: readonly number[],
  damping: number,
): number[] | null {
  const now = residuals(at);
  const columns = at.map((value, which) => {
    const little = 1e-6 * Math.max(1, Math.abs(value));
    const beside = residuals(at.with(which, value + little));
    return beside.map((residual, row) => (residual - (now[row] ?? 0)) / little);
  });
  const weights = now.map((value) => Math.sqrt(Math.min(1, huber / Math.max(1e-12, Math.abs(value)))));
  const rows = now.map((_, row) => columns.map((column) => (column[row] ?? 0) * (weights[row] ?? 1)));
  const right = now.map((value, row) => -value * (weights[row] ?? 1));
  const { matrix, gradient } = normalEquations(rows, right);
  matrix.forEach((line, which) => {
    line[which] = (line[which] ?? 0) * (1 + damping) + 1e-12;
  });
  return solveSymmetric(matrix, gradient);
}

function lossOf(residuals: readonly number[]): number {
  return residuals.reduce((total, value) => {
    const size = Math.abs(value);
    return total + (size < huber ? size * size : huber * (2 * size - huber));
  }, 0);
}
