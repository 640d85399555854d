import { isWrongAt } from "../longSeams.ts";
import { type Site, type SiteBlock, type SitePiece, steps } from "../site.ts";
import { below, beside, cloth, pieced, type Sketch } from "../sketch.ts";

/**
 * Equal squares, about 10 in finished or as large as most of her blocks; pieced ones and blocks among plain ones.
 * Plain squares that are neighbours in a row are one piece of plain cloth: no one sews seams that don't show.
 */
export function squares(site: Site): Sketch {
  const grid = gridOf(site);
  const kinds = kindsOf(site, grid);
  const across = grid.x.count;
  const rows = Array.from({ length: grid.y.count }, (_, y) =>
    calmRow(kinds.slice(y * across, (y + 1) * across), grid.side, site.widest),
  );
  return edged(site, below(rows), grid);
}

function edged(site: Site, core: Sketch, { x, y }: Grid): Sketch {
  const edge = (width: number, height: number) => cloth(width, height, "spacer");
  const middle = beside([edge(x.before, core.height), core, edge(x.after, core.height)]);
  return below([edge(site.width, y.before), middle, edge(site.width, y.after)]);
}

function calmRow(squares: readonly Sketch[], side: number, widest: number): Sketch {
  const calm: Sketch[] = [];
  for (const square of squares) {
    const last = calm.at(-1);
    const wide = last?.kind === "cloth" && square.kind === "cloth" ? last.width + side : 0;
    // Within one width of bought cloth it needs no seam of its own.
    if (wide > 0 && (side <= widest || wide <= widest)) calm[calm.length - 1] = cloth(wide, side);
    else calm.push(square);
  }
  return beside(calm);
}

/** Equal squares, and the plain edges before and after them. */
type Grid = { readonly side: number; readonly x: Run; readonly y: Run };
type Run = { readonly count: number; readonly before: number; readonly after: number; readonly cost: number };

function gridOf(site: Site): Grid {
  const width = site.width - 2 * site.ringX;
  const height = site.height - 2 * site.ringY;
  const wanted = Math.max(wantedSide(site), Math.sqrt((width * height) / Math.max(20, site.joins)));
  const common = commonSide(site, wanted);
  const own = common === null ? null : gridFor(site, common);
  return own ?? bestGrid(site, wanted);
}

function gridFor(site: Site, side: number): Grid | null {
  const x = runOf(site, side, { whole: site.width, ring: site.ringX, outline: site.outlineX });
  const y = runOf(site, side, { whole: site.height, ring: site.ringY, outline: site.outlineY });
  return x === null || y === null ? null : { side, x, y };
}

type Axis = { readonly whole: number; readonly ring: number; readonly outline: number | null };

/** As many squares as go, where no seam between them is wrong; the edges nearly alike. */
function runOf(site: Site, side: number, axis: Axis): Run | null {
  let best: Run | null = null;
  const { whole, ring } = axis;
  const nudge = Math.max(1, Math.round(site.inch / 4));
  for (let count = Math.floor((whole - 2 * ring) / side); count > 0; count--) {
    const rest = whole - count * side;
    if (best !== null && rest > 4 * side) break;
    for (let before = ring; before <= rest - ring; before += nudge) {
      const after = rest - before;
      const cost = rest + Math.abs(before - after);
      if (best !== null && cost >= best.cost) continue;
      if (!isEdge(site, before) || !isEdge(site, after)) continue;
      if (isSeamWrong(site, axis, { before, side, count })) continue;
      best = { count, before, after, cost };
    }
  }
  return best;
}

type Squares = { readonly before: number; readonly side: number; readonly count: number };

function isSeamWrong({ inch }: Site, { whole, outline }: Axis, { before, side, count }: Squares): boolean {
  for (let at = before; at <= before + count * side; at += side) {
    if (at > 0 && at < whole && isWrongAt(at, whole, outline, inch)) return true;
  }
  return false;
}

/** Plain cloth at the edge is no sliver; by hand there is none of it, where the squares just fill. */
function isEdge({ inch }: Site, edge: number): boolean {
  return edge === 0 || edge >= inch;
}

/** Near the wanted side, the one whose squares leave least over at the edges. */
function bestGrid(site: Site, wanted: number): Grid {
  const whole = Math.floor(Math.min(site.width - 2 * site.ringX, site.height - 2 * site.ringY));
  let best: Grid | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let side = Math.ceil(wanted * 0.75); side <= wanted * 1.35; side++) {
    const grid = gridFor(site, side);
    if (grid === null) continue;
    const covered = (grid.x.count * grid.y.count * side * side) / (site.width * site.height);
    const askew = Math.abs(grid.x.before - grid.x.after) + Math.abs(grid.y.before - grid.y.after);
    const cost = 1 - covered + Math.abs(side - wanted) / wanted / 3 + askew / (site.width + site.height);
    if (cost < least) [best, least] = [grid, cost];
  }
  return best ?? single(site, whole);
}

function single(site: Site, side: number): Grid {
  const run = (whole: number) => {
    const before = Math.floor((whole - side) / 2);
    return { count: 1, before, after: whole - side - before, cost: 0 };
  };
  return { side, x: run(site.width), y: run(site.height) };
}

function wantedSide(site: Site): number {
  return Math.min(steps(site, 10), Math.floor(Math.min(site.width, site.height) / 3));
}

/** The side that most of her square pieces have, alone or as fours or nines; null where they are too few. */
function commonSide(site: Site, wanted: number): number | null {
  const sides = site.pieces.flatMap(({ width }) => [width, 2 * width, 3 * width]);
  const usual = [...new Set(sides)].filter((side) => side >= wanted * 0.75 && side <= wanted * 1.6);
  const ready = usual.map((side) => ({ side, count: squaresFrom(site, side) }));
  const most = ready.reduce((best, next) => (next.count > best.count ? next : best), { side: 0, count: 0 });
  return most.count >= 3 && isMuch(site, most) ? most.side : null;
}

type Ready = { readonly side: number; readonly count: number };

/** Where most of her heap is of other sizes, squares are pieced of those too. */
function isMuch(site: Site, { side, count }: Ready): boolean {
  return count * side * side >= site.target / 2;
}

/** How many squares of this side her square pieces make, one, four or nine alike to each. */
function squaresFrom(site: Site, side: number): number {
  let squares = 0;
  for (const piece of site.pieces) {
    const alike = alikeFor(piece, side);
    if (alike > 0) squares += Math.floor(piece.count / alike ** 2);
  }
  return squares;
}

/** So many alike each way make a square of this side; 0: however many, they don't. */
function alikeFor({ width, height, trim }: SitePiece, side: number): number {
  for (let alike = 1; alike <= 3; alike++) {
    const isLong = alike * width >= side && alike * height >= side;
    if (isLong && alike * (width - trim(width)) <= side && alike * (height - trim(height)) <= side)
      return alike;
  }
  return 0;
}

function squareBlocks(site: Site): SiteBlock[] {
  return site.blocks.filter((block) => block.width === block.height);
}

/** Blocks that fit exactly first, then pieced squares while the heap lasts, spread evenly over the grid. */
function kindsOf(site: Site, grid: Grid): Sketch[] {
  const { side } = grid;
  const [across, down] = [grid.x.count, grid.y.count];
  const fitting = squareBlocks(site)
    .filter((block) => block.width === side)
    .flatMap((block) => Array.from({ length: block.count }, () => block.piece));
  const area = side * side;
  const ready = squaresFrom(site, side);
  const isOwn = ready >= 3 && isMuch(site, { side, count: ready });
  const wanted = isOwn ? ready : Math.max(2, Math.floor((site.target * 0.95) / area));
  const count = Math.min(across * down, wanted, affordable(site, fitting.length, down));
  const busy = spread(across, down, count);
  const gap = Math.max(1, Math.floor(count / Math.max(1, fitting.length)));
  let nth = 0;
  return busy.map((isBusy, at) => {
    if (!isBusy) return cloth(side, side);
    const place = { x: at % across, y: Math.floor(at / across) };
    const turn = isWellInside(site, grid, place) && nth++ % gap === 0;
    const piece = turn ? fitting.shift() : undefined;
    if (piece === undefined) return pieced(side, side);
    return { kind: "block", piece, turned: false, width: side, height: side };
  });
}

/** A block at the top's outline would lose its points. */
function isWellInside(site: Site, { side, x, y }: Grid, place: { x: number; y: number }): boolean {
  const isInside = (from: number, whole: number, outline: number | null) =>
    outline === null || Math.min(from, whole - from - side) >= outline + site.inside;
  return (
    isInside(x.before + place.x * side, site.width, site.outlineX) &&
    isInside(y.before + place.y * side, site.height, site.outlineY)
  );
}

// The ring and the rows take so many joins; each square sets off two seams in its row and, pieced, a few inside it.
function affordable(site: Site, blocks: number, rows: number): number {
  const left = site.joins - rows - 4;
  if (left <= blocks * 2) return Math.max(2, Math.floor(left / 2));
  return blocks + Math.max(1, Math.floor((left - blocks * 2) / 5));
}

/** `count` of the places: chess-like, and those that stay plain as far from one another as those that don't. */
function spread(across: number, down: number, count: number): boolean[] {
  const places = Array.from({ length: across * down }, (_, at) => ({
    x: at % across,
    y: Math.floor(at / across),
  }));
  const even = places.filter(({ x, y }) => (x + y) % 2 === 0);
  const odd = places.filter(({ x, y }) => (x + y) % 2 === 1);
  const busy = new Set(
    count <= even.length ? spacedOut(even, count) : [...even, ...spacedOut(odd, count - even.length)],
  );
  return places.map((place) => busy.has(place));
}

type GridPlace = { readonly x: number; readonly y: number };

function spacedOut(places: readonly GridPlace[], count: number): GridPlace[] {
  if (count <= places.length / 2) return farApart(places, count);
  const left = new Set(farApart(places, places.length - count));
  return places.filter((place) => !left.has(place));
}

/** One after the other, each as far as can be from those that are there already. */
function farApart(places: readonly GridPlace[], count: number): GridPlace[] {
  const far = new Map(places.map((place) => [place, Number.POSITIVE_INFINITY]));
  const chosen: GridPlace[] = [];
  let next = places[Math.floor(places.length / 3)];
  while (chosen.length < count && next !== undefined) {
    const last: GridPlace = next;
    chosen.push(last);
    far.delete(last);
    next = undefined;
    for (const [place, least] of far) {
      const now = Math.min(least, (place.x - last.x) ** 2 + (place.y - last.y) ** 2);
      far.set(place, now);
      if (next === undefined || now > (far.get(next) ?? 0)) next = place;
    }
  }
  return chosen;
}
