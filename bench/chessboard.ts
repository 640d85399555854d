import type { Place } from "../src/photo/index.ts";

// Finds the inner corners of a chessboard: the vision library as it is built for browsers has no such search.

/** One byte a pixel, row by row; a pixel's middle is at whole numbers. */
export type Grey = { readonly width: number; readonly height: number; readonly bytes: Uint8Array };

/** Inner corners row by row, as whole steps of the board go right and down in the picture's own sense of turning. */
export type Board = readonly (readonly Place[])[];

/** The board of so many inner corners, each to a fraction of a pixel; null where no whole one is seen. */
export function boardIn(picture: Grey, across: number, down: number): Board | null {
  const likely = likelyCorners(picture);
  for (const seed of likely.slice(0, mostSeeds)) {
    const corners = likely.filter(({ strength }) => strength > likeStrength * seed.strength);
    const places = corners.map(({ place }) => place);
    for (const steps of stepsFrom(seed.place, places)) {
      const board = rowsOf(grown(seed.place, steps, places), across, down);
      if (board) return sharpened(picture, board);
    }
  }
  return null;
}

const mostSeeds = 20;
// Corners of one board are about as strong as one another.
const likeStrength = 0.3;
const mostCorners = 300;
// Of the light round a place, in steps of a byte: less is no corner of a board that one can see.
const leastChange = 100;

const ringRadius = 5;
const ring = Array.from({ length: 16 }, (_, at): Place => {
  const angle = (at * Math.PI) / 8;
  return [Math.round(ringRadius * Math.cos(angle)), Math.round(ringRadius * Math.sin(angle))];
});

type Likely = { readonly place: Place; readonly strength: number };

/** The strongest places where dark and light change twice round the place (Bennett and Lasenby 2014), strongest first. */
function likelyCorners(picture: Grey): readonly Likely[] {
  const { width, height } = picture;
  const strengths = new Float32Array(width * height);
  for (let y = ringRadius + 1; y < height - ringRadius - 1; y += 1)
    for (let x = ringRadius + 1; x < width - ringRadius - 1; x += 1)
      strengths[y * width + x] = strengthAt(picture, x, y);
  const found: Likely[] = [];
  for (let at = 0; at < strengths.length; at += 1) {
    const strength = strengths[at] ?? 0;
    const [x, y] = [at % width, Math.floor(at / width)];
    if (strength > 0 && isHighest(strengths, width, [x, y])) found.push({ place: [x, y], strength });
  }
  return found.toSorted((one, other) => other.strength - one.strength).slice(0, mostCorners);
}

function strengthAt({ width, bytes }: Grey, x: number, y: number): number {
  const at = y * width + x;
  const light = (n: number) => {
    const [right, down] = ring[n % 16] ?? [0, 0];
    return bytes[at + down * width + right] ?? 0;
  };
  let [changes, unlike, sum] = [0, 0, 0];
  for (let n = 0; n < 4; n += 1) {
    const [one, other] = [light(n) + light(n + 8), light(n + 4) + light(n + 12)];
    changes += Math.abs(one - other);
    sum += one + other;
  }
  if (changes < leastChange) return 0;
  for (let n = 0; n < 8; n += 1) unlike += Math.abs(light(n) - light(n + 8));
  const [right, below] = [bytes[at + 1] ?? 0, bytes[at + width] ?? 0];
  const near = ((bytes[at] ?? 0) + (bytes[at - 1] ?? 0) + right + (bytes[at - width] ?? 0) + below) / 5;
  return changes - unlike - 16 * Math.abs(sum / 16 - near);
}

function isHighest(strengths: Float32Array, width: number, [x, y]: Place): boolean {
  const here = strengths[y * width + x] ?? 0;
  for (let down = -ringRadius; down <= ringRadius; down += 1)
    for (let right = -ringRadius; right <= ringRadius; right += 1)
      if ((strengths[(y + down) * width + x + right] ?? 0) > here) return false;
  return true;
}

type Steps = readonly [right: Place, down: Place];

/** Two steps to near corners, neither along the other, that turn from right to down. */
function stepsFrom(seed: Place, corners: readonly Place[]): readonly Steps[] {
  const near = corners
    .filter((corner) => corner !== seed)
    .map((corner) => less(corner, seed))
    .toSorted((one, other) => Math.hypot(...one) - Math.hypot(...other))
    .slice(0, 6);
  return near.flatMap((right) =>
    near
      .filter(
        (down) => right[0] * down[1] - right[1] * down[0] > 0.4 * Math.hypot(...right) * Math.hypot(...down),
      )
      .map((down): Steps => [right, down]),
  );
}

type Cell = { readonly column: number; readonly row: number; readonly place: Place };
type Grid = ReadonlyMap<string, Cell>;

const ways = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** All corners that can be reached from a seed step by step, each where the steps beside it say that it lies. */
function grown(seed: Place, steps: Steps, corners: readonly Place[]): Grid {
  const grid = new Map<string, Cell>();
  const used = new Set<Place>([seed]);
  const waiting: Cell[] = [{ column: 0, row: 0, place: seed }];
  grid.set(keyOf(0, 0), { column: 0, row: 0, place: seed });
  for (let cell = waiting.shift(); cell !== undefined; cell = waiting.shift())
    for (const way of ways) {
      const [column, row] = [cell.column + way[0], cell.row + way[1]];
      if (grid.has(keyOf(column, row))) continue;
      const place = nextCorner(cell.place, stepAt(grid, cell, { way, steps }), corners);
      if (place === null || used.has(place)) continue;
      used.add(place);
      const next = { column, row, place };
      grid.set(keyOf(column, row), next);
      waiting.push(next);
    }
  return grid;
}

function keyOf(column: number, row: number): string {
  return `${column} ${row}`;
}

/** The step of the last cell in this way, or of the row beside it, or of the beginning. */
function stepAt(
  grid: Grid,
  { column, row, place }: Cell,
  { way: [right, down], steps }: { readonly way: readonly [number, number]; readonly steps: Steps },
): Place {
  const at = (x: number, y: number) => grid.get(keyOf(column + x, row + y))?.place;
  const behind = at(-right, -down);
  if (behind) return less(place, behind);
  for (const side of [1, -1]) {
    const [from, to] = [at(side * down, side * right), at(side * down + right, side * right + down)];
    if (from && to) return less(to, from);
  }
  const [along, across] = steps;
  return [right * along[0] + down * across[0], right * along[1] + down * across[1]];
}

const strays = 0.3;

function nextCorner(from: Place, step: Place, corners: readonly Place[]): Place | null {
  const meant: Place = [from[0] + step[0], from[1] + step[1]];
  let [best, least] = [null as Place | null, strays * Math.hypot(...step)];
  for (const corner of corners) {
    const off = Math.hypot(corner[0] - meant[0], corner[1] - meant[1]);
    if (off < least) [best, least] = [corner, off];
  }
  return best;
}

/** The whole board in a grid that may reach a stray corner further, turned a quarter where it stands upright. */
function rowsOf(grid: Grid, across: number, down: number): Board | null {
  for (const { column, row } of grid.values()) {
    const lying = rowsFrom(grid, { across, down }, (x, y) => [column + x, row + y]);
    const upright = rowsFrom(grid, { across, down }, (x, y) => [column - y, row + x]);
    if (lying || upright) return lying ?? upright;
  }
  return null;
}

type Count = { readonly across: number; readonly down: number };

function rowsFrom(
  grid: Grid,
  { across, down }: Count,
  cellAt: (x: number, y: number) => readonly [column: number, row: number],
): Board | null {
  const board = Array.from({ length: down }, (_, y) =>
    Array.from({ length: across }, (__, x) => grid.get(keyOf(...cellAt(x, y)))?.place ?? null).filter(
      (place) => place !== null,
    ),
  );
  return board.every((row) => row.length === across) ? board : null;
}

function sharpened(picture: Grey, board: Board): Board {
  const all = board.flat();
  const closest = Math.min(
    ...all.map((one) =>
      Math.min(...all.filter((other) => other !== one).map((other) => Math.hypot(...less(other, one)))),
    ),
  );
  const reach = Math.max(3, Math.min(8, Math.round(0.3 * closest)));
  return board.map((row) => row.map((corner) => saddleNear(picture, corner, reach)));
}

const rounds = 20;

/** The place that all light round it changes square to (Förstner and Gülch 1987), looked for again from where it is. */
function saddleNear(picture: Grey, start: Place, reach: number): Place {
  let place = start;
  for (let round = 0; round < rounds; round += 1) {
    const next = saddleFrom(picture, place, reach);
    if (next === null || Math.hypot(...less(next, start)) > reach) return place;
    const moved = Math.hypot(...less(next, place));
    place = next;
    if (moved < 1e-3) break;
  }
  return place;
}

function saddleFrom(picture: Grey, [x, y]: Place, reach: number): Place | null {
  let [xx, xy, yy, right, down] = [0, 0, 0, 0, 0];
  for (let v = -reach; v <= reach; v += 1)
    for (let u = -reach; u <= reach; u += 1) {
      const weight = Math.exp((-2 * (u * u + v * v)) / reach ** 2);
      const along = lightAt(picture, x + u + 1, y + v) - lightAt(picture, x + u - 1, y + v);
      const across = lightAt(picture, x + u, y + v + 1) - lightAt(picture, x + u, y + v - 1);
      const [a, b, c] = [weight * along * along, weight * along * across, weight * across * across];
      xx += a;
      xy += b;
      yy += c;
      right += a * u + b * v;
      down += b * u + c * v;
    }
  const turn = xx * yy - xy * xy;
  if (turn < 1e-9) return null;
  return [x + (yy * right - xy * down) / turn, y + (xx * down - xy * right) / turn];
}

function lightAt({ width, height, bytes }: Grey, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [u, v] = [x - left, y - top];
  const byte = (column: number, row: number) =>
    bytes[Math.max(0, Math.min(height - 1, row)) * width + Math.max(0, Math.min(width - 1, column))] ?? 0;
  const upper = (1 - u) * byte(left, top) + u * byte(left + 1, top);
  const lower = (1 - u) * byte(left, top + 1) + u * byte(left + 1, top + 1);
  return (1 - v) * upper + v * lower;
}

function less(one: Place, other: Place): Place {
  return [one[0] - other[0], one[1] - other[1]];
}
