export function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, next) => sum + next, 0) / numbers.length;
}

export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [low = 0, high = 0] = [sorted[sorted.length % 2 === 1 ? middle : middle - 1], sorted[middle]];
  return (low + high) / 2;
}

/** Groups in the order in which their first row comes. */
export function groupedBy<Row>(rows: readonly Row[], keyOf: (row: Row) => string): [string, Row[]][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return [...groups];
}

/** Per hundred, of a share of 0 to 1. */
export function percent(share: number, digits = 1): string {
  return (100 * share).toFixed(digits);
}
