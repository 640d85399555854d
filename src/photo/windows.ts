/** A grid of numbers, row by row. */
export type Grid = { readonly width: number; readonly height: number };

/** Puts sums over the windows of a grid into an array that is given: of all values, or of those where `of` is 1. */
export type Windows = (values: Float32Array, into: Float32Array, of?: Uint8Array | null) => void;

/**
 * Sums over the square of `radius` round each place, by running sums along the rows and then down the columns. What
 * they take on the way is taken once: memory that is new costs more than the sums.
 */
export function windowsOver({ width, height }: Grid, radius: number): Windows {
  // Rows of zeros above and below, so that what enters and leaves is always there.
  const [before, behind] = [width * (radius + 1), width * radius];
  const along = new Float32Array(before + width * height + behind);
  const running = new Float64Array(width);
  return (values, into, of = null) => {
    for (let row = 0; row < height; row += 1) {
      const place = { from: row * width, to: before + row * width, width, radius };
      if (of === null) sumAlong(values, along, place);
      else sumSomeAlong(values, of, along, place);
    }
    running.fill(0);
    for (let y = 0; y < radius; y += 1) enter(running, along, before + y * width);
    // All columns at once, so that memory is gone through in order.
    for (let y = 0, at = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1, at += 1) {
        const sum = (running[x] ?? 0) + (along[at + before + behind] ?? 0) - (along[at] ?? 0);
        running[x] = sum;
        into[at] = sum;
      }
  };
}

type Row = {
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly radius: number;
};

function sumAlong(values: Float32Array, along: Float32Array, { from, to, width, radius }: Row): void {
  let sum = 0;
  for (let x = 0; x < Math.min(radius, width); x += 1) sum += values[from + x] ?? 0;
  for (let x = 0; x < width; x += 1) {
    if (x + radius < width) sum += values[from + x + radius] ?? 0;
    if (x > radius) sum -= values[from + x - radius - 1] ?? 0;
    along[to + x] = sum;
  }
}

function sumSomeAlong(values: Float32Array, of: Uint8Array, along: Float32Array, row: Row): void {
  const { from, to, width, radius } = row;
  let sum = 0;
  for (let at = from; at < from + Math.min(radius, width); at += 1) sum += (of[at] ?? 0) * (values[at] ?? 0);
  for (let x = 0; x < width; x += 1) {
    const at = from + x;
    if (x + radius < width) sum += (of[at + radius] ?? 0) * (values[at + radius] ?? 0);
    if (x > radius) sum -= (of[at - radius - 1] ?? 0) * (values[at - radius - 1] ?? 0);
    along[to + x] = sum;
  }
}

function enter(running: Float64Array, along: Float32Array, from: number): void {
  for (let x = 0; x < running.length; x += 1) running[x] = (running[x] ?? 0) + (along[from + x] ?? 0);
}
