import { type Site, type SiteBlock, steps } from "../site.ts";
import { below, beside, cloth, pieced, ringed, type Sketch } from "../sketch.ts";

/**
 * Equal squares, about 10 in finished or as large as most of her blocks; pieced ones and blocks among plain ones.
 * Plain squares that are neighbours in a row are one piece of plain cloth: no one sews seams that don't show.
 */
export function squares(site: Site): Sketch {
  const grid = gridOf(site);
  const kinds = kindsOf(site, grid);
  const rows = Array.from({ length: grid.down }, (_, y) =>
    calmRow(kinds.slice(y * grid.across, (y + 1) * grid.across), grid.side, site.widest),
  );
  return ringed(site, below(rows));
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

type Grid = { readonly side: number; readonly across: number; readonly down: number };

function gridOf(site: Site): Grid {
  const width = site.width - 2 * site.ringX;
  const height = site.height - 2 * site.ringY;
  const wanted = Math.max(wantedSide(site), Math.sqrt((width * height) / Math.max(20, site.joins)));
  const common = commonSide(site);
  if (common !== null && common >= wanted * 0.8 && leavesEnough(site, common)) return gridFor(site, common);
  return gridFor(site, bestSide(site, wanted));
}

function gridFor(site: Site, side: number): Grid {
  const across = Math.floor((site.width - 2 * site.ringX) / side);
  return { side, across, down: Math.floor((site.height - 2 * site.ringY) / side) };
}

/** Near the wanted side, the one whose squares leave least over at the edges, and no sliver. */
function bestSide(site: Site, wanted: number): number {
  let best = Math.floor(Math.min(site.width - 2 * site.ringX, site.height - 2 * site.ringY));
  let least = Number.POSITIVE_INFINITY;
  for (let side = Math.ceil(wanted * 0.75); side <= wanted * 1.35; side++) {
    if (!leavesEnough(site, side)) continue;
    const { across, down } = gridFor(site, side);
    if (across === 0 || down === 0) continue;
    const covered = (across * down * side * side) / (site.width * site.height);
    const cost = 1 - covered + Math.abs(side - wanted) / wanted / 3;
    if (cost < least) {
      least = cost;
      best = side;
    }
  }
  return best;
}

function leavesEnough(site: Site, side: number): boolean {
  const { across, down } = gridFor(site, side);
  return [site.width - across * side, site.height - down * side].every(
    (rest) => rest === 0 || rest >= site.inch,
  );
}

function wantedSide(site: Site): number {
  return steps(site, 10);
}

/** The side that at least three of her square blocks have. */
function commonSide(site: Site): number | null {
  const square = squareBlocks(site).filter(
    (block) => block.width >= steps(site, 7) && block.width <= steps(site, 16),
  );
  const most = square.sort((one, other) => other.count - one.count)[0];
  return most !== undefined && most.count >= 3 ? most.width : null;
}

function squareBlocks(site: Site): SiteBlock[] {
  return site.blocks.filter((block) => block.width === block.height);
}

/** Blocks that fit exactly first, then pieced squares while the heap lasts, spread evenly over the grid. */
function kindsOf(site: Site, { side, across, down }: Grid): Sketch[] {
  const fitting = squareBlocks(site)
    .filter((block) => block.width === side)
    .flatMap((block) => Array.from({ length: block.count }, () => block.piece));
  const area = side * side;
  const wanted = Math.max(2, Math.floor((site.target * 0.95) / area));
  const count = Math.min(across * down, wanted, affordable(site, fitting.length, down));
  const busy = spread(across, down, count);
  const gap = Math.max(1, Math.floor(count / Math.max(1, fitting.length)));
  let nth = 0;
  return busy.map((isBusy) => {
    if (!isBusy) return cloth(side, side);
    const piece = nth++ % gap === 0 ? fitting.shift() : undefined;
    if (piece === undefined) return pieced(side, side);
    return { kind: "block", piece, turned: false, width: side, height: side };
  });
}

// The ring and the rows take so many joins; each square sets off two seams in its row and, pieced, a few inside it.
function affordable(site: Site, blocks: number, rows: number): number {
  const left = site.joins - rows - 4;
  if (left <= blocks * 2) return Math.max(2, Math.floor(left / 2));
  return blocks + Math.max(1, Math.floor((left - blocks * 2) / 5));
}

/** `count` of the places, chess-like, starting where no four meet. */
function spread(across: number, down: number, count: number): boolean[] {
  const places = Array.from({ length: across * down }, (_, at) => at);
  const rank = (at: number) => {
    const x = at % across;
    const y = Math.floor(at / across);
    return ((x + y) % 2) * 1000 + ((x * 5 + y * 8) % 13) * 10 + y / down;
  };
  places.sort((one, other) => rank(one) - rank(other));
  const busy = places.map(() => false);
  for (const at of places.slice(0, count)) busy[at] = true;
  return busy;
}
