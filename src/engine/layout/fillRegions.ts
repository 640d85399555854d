import type { PiecedRegion, Style } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";
import { chooseUnits, joinsOnPoint } from "../units/index.ts";
import { joinsFor, slabJoins } from "../work/index.ts";
import { clashOf } from "./contrast.ts";
import { Earlier } from "./earlier.ts";
import type { Ground } from "./ground.ts";
import { heapBeside } from "./heapBeside.ts";
import { edgesOf, keptInside } from "./keptInside.ts";
import { mended } from "./mended.ts";
import { type Outline, polish } from "./polish.ts";
import { pricesAllOver } from "./prices.ts";
import { randomFrom } from "./random.ts";
import { piecesIn, type Search, type Space, startSearch } from "./search.ts";
import { settle } from "./settle.ts";
import { type Stock, stockOf } from "./stock.ts";
import { coveredIn, thinned } from "./thinned.ts";
import { recoloured, type Tidied, type Tidying, tidied } from "./tidy/tidy.ts";
import type { Twig } from "./twig.ts";
import type { LayoutNode } from "./types.ts";

export type RegionSearch = {
  /** Makes that many moves; each leaves a whole layout. */
  step(moves: number): void;
  readonly moves: number;
  readonly done: boolean;
  /** Share of the pieced regions that leftovers cover in the best layout so far, 0 to 1. */
  readonly covered: number;
  /** The best layout so far; its cloth is still all to buy. */
  layout(): LayoutNode;
  /** A layout of this search whose cloth has its sources, once more with an eye to how fabrics meet. */
  recoloured(layout: LayoutNode): LayoutNode;
};

/** Starts filling the pieced regions of a composition with her leftovers. */
export function fillRegions(
  region: Ground,
  job: Job,
  { style, seed, effort }: { readonly style: Style; readonly seed: number; readonly effort: number },
): RegionSearch {
  const spots = spotsIn(region, { x: 0, y: 0 });
  const { heap, begun } = heapBeside(region, job);
  const units = chooseUnits(heap, {
    allOver: style === "all-over",
    seed,
    rooms: spots.map((spot) => spot.region),
  });
  const spaces = spots.map(({ region: { width, height } }) => ({
    width: width / job.step,
    height: height / job.step,
    allows: () => true,
  }));
  const usual = stockOf(heap, units, begun);
  const share = style === "all-over" ? shareOfRoom(usual, spaces) : 0;
  const dense = share >= leastDense;
  const full = { share, pieces: piecesIn(usual) };
  const stock = dense ? stockOf(heap, units, begun, pricesAllOver(usual.prices, full)) : usual;
  const mostLeaves = joinsFor(job) + 1 - fixedLeaves(region);
  const search = startSearch(stock, spaces, { seed, effort, mostLeaves, dense });
  const edges = spots.map((spot) => edgesOf(spot, region));
  const arrange = (twigs: readonly Twig[], turn: number) => keptInside(polished(twigs, turn), edges, stock);
  const polished = (twigs: readonly Twig[], turn: number) =>
    polish(twigs, {
      stock,
      clash: clashOf(job),
      rooms: spots.map((spot) => ({ cloth: spot.region.fabric, outline: outlineFrom(spot, region, job) })),
      random: randomFrom(seed + turn),
      tries: polishTries(twigs, search.moves),
    });
  const whole = (twigs: readonly Twig[]) =>
    thinned(
      twigs.map((twig) => mended(twig, stock)),
      stock,
      mostLeaves,
    );
  const stays = staysIn(region, { x: 0, y: 0 });
  const mayMiss = style === "all-over";
  const tidying = { job, spots: spots.map(rectOf), halves: halvesOf(spots, style), mayMiss, stays };
  const looksOver = (found: readonly Twig[], turn: number): Tidied => {
    const twigs = arrange(whole(found), turn);
    const layout = settle(region, twigs, job);
    const tries = tidyTries(twigs, search.moves, job);
    if (tries === 0) return { layout, used: 0, kept: 1, wrong: 0, hasEnded: false };
    return tidied(layout, { ...tidying, tries });
  };
  const earlier = new Earlier(search);
  return watched(search, {
    step: (moves) => earlier.step(moves),
    layout: () =>
      job.top === null
        ? looksOver(search.best, 0).layout
        : bestTidied([search.best, ...earlier.latest], looksOver),
    recoloured: (layout) => {
      const tries = tidyTries(search.best, search.moves, job);
      return tries === 0 ? layout : recoloured(layout, { ...tidying, tries });
    },
  });
}

/** Where the last look took away more than that, what was found earlier is looked over too. */
const wellKept = 0.8;
/** So often the fullest is arranged anew while something is wrong with the best. */
const mostTurns = 3;

type LooksOver = (found: readonly Twig[], turn: number) => Tidied;

/**
 * The fullest that is found may be what can be sewn least: the last look then makes most of it plain, or leaves
 * something wrong. An earlier one that is less full may keep more, and the same arranged otherwise may come out right.
 */
function bestTidied(found: readonly (readonly Twig[])[], looksOver: LooksOver): LayoutNode {
  const [latest = [], ...before] = found;
  let best = looksOver(latest, 0);
  let last = best;
  for (const twigs of before) {
    if (last.kept >= wellKept && !isWrongAtLast(best)) break;
    last = looksOver(twigs, 0);
    if (isBetter(last, best)) best = last;
  }
  for (let turn = 1; turn <= mostTurns && isWrongAtLast(best); turn++) {
    last = looksOver(latest, turn);
    if (isBetter(last, best)) best = last;
  }
  return best.layout;
}

/** More looks wouldn't have helped. */
function isWrongAtLast({ wrong, hasEnded }: Tidied): boolean {
  return wrong > 0 && hasEnded;
}

/** Less is wrong and hardly less shows, or clearly more shows and no more is wrong. */
function isBetter(one: Tidied, other: Tidied): boolean {
  if (one.wrong < other.wrong) return one.used >= other.used * 0.9;
  return one.wrong === other.wrong && one.used > other.used * 1.05;
}

/**
 * An all-over back that her leftovers fill by half or more is to be filled closely. Where there are fewer, hardly any lies
 * open that could be looked among; other styles are drawn round the heap, and plain cloth in their rows is a fault.
 */
const leastDense = 0.5;

function shareOfRoom({ lots }: Stock, spaces: readonly Space[]): number {
  const room = spaces.reduce((sum, { width, height }) => sum + width * height, 0);
  return lots.reduce((sum, { area, count }) => sum + area * count, 0) / room;
}

// Looking at an arrangement takes time with its cells, so large ones get fewer looks; a first plan, wanted at once, a few.
function polishTries(twigs: readonly Twig[], moves: number): number {
  const largest = Math.max(0, ...twigs.map((twig) => twig.leaves));
  return Math.min(2000, moves, Math.round(600_000 / (largest + 20)));
}

// The same for the last look; short searches get it too, since whatever she stops at may be sewn.
function tidyTries(twigs: readonly Twig[], moves: number, { top }: Job): number {
  const leaves = twigs.reduce((sum, twig) => sum + twig.leaves, 0);
  const most = Math.round(Math.min(3000, 20 * moves, 400_000 / (leaves + 20)));
  if (top !== null) return most;
  return leaves > 40 ? 0 : Math.round(Math.min(most, moves) / 15);
}

/** Of a cross, the row down above and under the row across. */
function halvesOf(spots: readonly Spot[], style: Style): Tidying["halves"] {
  return style === "cross" && spots.length === 3 ? [0, 2] : null;
}

type Spot = { readonly region: PiecedRegion; readonly x: number; readonly y: number };

function rectOf({ region: { width, height, fabric }, x, y }: Spot): Tidying["spots"][number] {
  return { x, y, width, height, cloth: fabric };
}

function spotsIn(region: Ground, at: At): Spot[] {
  return placedIn(region, at).flatMap(({ region: part, x, y }) =>
    part.kind === "pieced" ? [{ region: part, x, y }] : [],
  );
}

function staysIn(region: Ground, at: At): Tidying["stays"] {
  return placedIn(region, at).flatMap(({ region: part, x, y }) =>
    part.kind === "stays" ? [{ x, y, width: part.width, height: part.height }] : [],
  );
}

type At = { readonly x: number; readonly y: number };

/** All but joins, where they lie. */
function placedIn(
  region: Ground,
  { x, y }: At,
): { readonly region: Ground; readonly x: number; readonly y: number }[] {
  if (region.kind !== "join") return [{ region, x, y }];
  let along = 0;
  return region.parts.flatMap((part) => {
    const at = region.direction === "beside" ? { x: x + along, y } : { x, y: y + along };
    along += region.direction === "beside" ? part.width : part.height;
    return placedIn(part, at);
  });
}

/** The top's outline as it lies from this spot's corner, in steps; null without a top. */
function outlineFrom(spot: Spot, layout: Ground, { top, step }: Job): Outline | null {
  if (top === null) return null;
  const left = ((layout.width - top.width) / 2 - spot.x) / step;
  const above = ((layout.height - top.height) / 2 - spot.y) / step;
  return { left, top: above, right: left + top.width / step, bottom: above + top.height / step };
}

type Made = Pick<RegionSearch, "step" | "layout" | "recoloured">;

function watched(search: Search, made: Made): RegionSearch {
  return {
    ...made,
    get moves() {
      return search.moves;
    },
    get done() {
      return search.done;
    },
    get covered() {
      return coveredShare(search.best);
    },
  };
}

function coveredShare(twigs: readonly Twig[]): number {
  const whole = twigs.reduce((sum, twig) => sum + twig.width * twig.height, 0);
  return whole === 0 ? 0 : twigs.reduce((sum, twig) => sum + coveredIn(twig), 0) / whole;
}

function fixedLeaves(region: Ground): number {
  if (region.kind === "join") return region.parts.reduce((sum, part) => sum + fixedLeaves(part), 0);
  if (region.kind === "on-point") return joinsOnPoint(region.blocks.length) + 1;
  if (region.kind === "stays") return cellsIn(region.node);
  return region.kind === "pieced" ? 0 : 1;
}

function cellsIn(node: LayoutNode): number {
  if (node.kind === "join") return node.parts.reduce((sum, part) => sum + cellsIn(part), 0);
  if (node.kind === "slab") return slabJoins(node) + 1;
  return node.kind === "unit" ? node.pieces.reduce((sum, { count }) => sum + count, node.cloth.length) : 1;
}
