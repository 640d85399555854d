import { type Eye, type Fault, inch } from "./fault.ts";
import { type Cell, type Line, type Scene, span } from "./scene.ts";

/** 4. Across a join seams meet exactly or are 1 in apart, 2 in where all cells there are longer than 8 in. */
export function nearMisses({ lines, banks }: Scene): Fault[] {
  return lines.flatMap((line, at) => {
    const [one = [], other = []] = banks[at] ?? [];
    if (one.length < 2 || other.length < 2) return [];
    return missesBetween(endsOf(one, line), endsOf(other, line), line);
  });
}

/** Where a seam ends on the line, between which two cells. */
type End = { readonly at: number; readonly least: number; readonly cells: readonly [Cell, Cell] };

function endsOf(cells: readonly Cell[], { upright }: Line): End[] {
  return cells.slice(1).map((cell, index) => {
    const last = cells[index] ?? cell;
    const least = Math.min(span(last, !upright), span(cell, !upright));
    return { at: upright ? cell.y : cell.x, least, cells: [last, cell] };
  });
}

function missesBetween(ones: readonly End[], others: readonly End[], { upright }: Line): Fault[] {
  const found: Fault[] = [];
  for (const one of ones) {
    for (const other of others) {
      const by = Math.abs(one.at - other.at);
      const needed = Math.min(one.least, other.least) > 8 * inch ? 2 * inch : inch;
      if (by === 0 || by >= needed) continue;
      const ways = [...one.cells, ...other.cells].map(({ way }) => way);
      found.push({ kind: "near miss", ways, by: [by, needed - by, needed + by], wide: !upright });
    }
  }
  return found;
}

/** 4. The halves of a cross's row down begin 6 in apart or more. */
export function halvesInLine({ cells }: Scene, { halves }: Eye): Fault[] {
  if (halves === null) return [];
  const [ones = [], others = []] = halves.map((spot) => cells.filter((cell) => isPieceOf(cell, spot)));
  if (ones.length === 0 || others.length === 0) return [];
  const [one, other] = [startOf(ones), startOf(others)];
  const by = Math.abs(one - other);
  if (by >= 6 * inch) return [];
  const first = [...ones.filter(({ x }) => x === one), ...others.filter(({ x }) => x === other)];
  return [
    { kind: "near miss", ways: first.map(({ way }) => way), by: [6 * inch - by, 6 * inch + by], wide: true },
  ];
}

export function isPieceOf({ cloth, spot }: Cell, region: number): boolean {
  return cloth === null && spot === region;
}

function startOf(cells: readonly Cell[]): number {
  return Math.min(...cells.map(({ x }) => x));
}

/** 5. At most four seams come together in a point, diagonals counted. */
export function heavyCrossings({ quarters }: Scene): Fault[] {
  return heavyPoints(quarters, () => true).map(({ round }) => ({
    kind: "crossing",
    ways: [...new Set(round.map(({ way }) => way))],
    by: [],
    wide: null,
  }));
}

export type HeavyPoint = Point & { readonly round: readonly Cell[] };

/** Of the points asked for, those where too much comes together; `quarters`: all that touch one of them. */
export function heavyPoints(quarters: readonly Cell[], isAsked: (point: Point) => boolean): HeavyPoint[] {
  const halves = quarters.filter(({ falling, rising }) => falling || rising);
  const seen = new Set<string>();
  return halves.flatMap(endsOfDiagonals).flatMap((point) => {
    const { x, y } = point;
    const key = `${x} ${y}`;
    if (seen.has(key) || !isAsked(point)) return [];
    seen.add(key);
    const round = cellsRound(quarters, x, y);
    if (round.length < 4 || isOwnAffair(round)) return [];
    const straight = round.filter((cell, at) => cell !== round[(at + 1) % 4]).length;
    return straight + diagonalsAt(halves, x, y) > 4 ? [{ x, y, round }] : [];
  });
}

/** The middle of a unit, and of its edge where nothing comes from the other side, is as it is sewn. */
function isOwnAffair(round: readonly Cell[]): boolean {
  // Two units of one make may be one node; where they lie tells them apart.
  const ways = new Set(round.map(({ way }) => way));
  if (ways.size !== 2) return ways.size === 1;
  const counts = [...ways].map((way) => new Set(round.filter((cell) => cell.way === way)).size);
  return round.some(({ node }) => node.kind === "unit") && counts.includes(1) && counts.includes(2);
}

export type Point = { readonly x: number; readonly y: number };

function endsOfDiagonals({ x, y, right, bottom, falling, rising }: Cell): Point[] {
  return [
    ...(falling
      ? [
          { x, y },
          { x: right, y: bottom },
        ]
      : []),
    ...(rising
      ? [
          { x: right, y },
          { x, y: bottom },
        ]
      : []),
  ];
}

/** Clockwise from the upper left; fewer than four at the edge of the back. */
function cellsRound(cells: readonly Cell[], x: number, y: number): Cell[] {
  const near = cells.filter((cell) => cell.x <= x && cell.right >= x && cell.y <= y && cell.bottom >= y);
  const at = (left: boolean, above: boolean) =>
    near.find((cell) => (left ? cell.x < x : cell.right > x) && (above ? cell.y < y : cell.bottom > y));
  return [at(true, true), at(false, true), at(false, false), at(true, false)].filter(
    (cell) => cell !== undefined,
  );
}

function diagonalsAt(halves: readonly Cell[], x: number, y: number): number {
  return halves.reduce(
    (count, half) => count + endsOfDiagonals(half).filter((end) => end.x === x && end.y === y).length,
    0,
  );
}
