/** A grid of numbers, row by row. */
export type Grid = { readonly width: number; readonly height: number };

/** Sums over the square of `radius` round each place, by running sums along the rows and then down the columns. */
export function windowSums(values: Float32Array, { width, height }: Grid, radius: number): Float32Array {
  const rows = new Float32Array(values.length);
  const running = new Float64Array(Math.max(width, height) + 1);
  for (let from = 0; from < values.length; from += width) {
    for (let x = 0; x < width; x += 1) running[x + 1] = (running[x] ?? 0) + (values[from + x] ?? 0);
    for (let x = 0; x < width; x += 1)
      rows[from + x] =
        (running[Math.min(width, x + radius + 1)] ?? 0) - (running[Math.max(0, x - radius)] ?? 0);
  }
  return summedDown(rows, { width, height }, radius);
}

/** All columns at once, so that memory is gone through in order. */
function summedDown(rows: Float32Array, { width, height }: Grid, radius: number): Float32Array {
  const sums = new Float32Array(rows.length);
  const running = new Float64Array(width);
  for (let y = -radius; y < height; y += 1) {
    const [enters, leaves] = [y + radius, y - radius - 1];
    for (let x = 0; x < width; x += 1) {
      let sum = running[x] ?? 0;
      if (enters < height) sum += rows[enters * width + x] ?? 0;
      if (leaves >= 0) sum -= rows[leaves * width + x] ?? 0;
      running[x] = sum;
      if (y >= 0) sums[y * width + x] = sum;
    }
  }
  return sums;
}
