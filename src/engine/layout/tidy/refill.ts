import type { Job } from "../../cloth/index.ts";
import { heapBeside } from "../heapBeside.ts";
import { mended } from "../mended.ts";
import { startSearch } from "../search.ts";
import { settleOne } from "../settle.ts";
import { type Stock, stockOf } from "../stock.ts";
import type { Twig } from "../twig.ts";
import type { LayoutNode } from "../types.ts";
import { type Bough, boughOf, clothIn, isFixed, layoutFrom, partAt, replacedAt, type Way } from "./bough.ts";
import type { Limits } from "./resize.ts";

/** So many searches for a gap, of so many moves, in so many turns. */
const searches = 4;
const moves = 24;
const turns = 3;

/** What a layout leaves over, to piece its gaps from. */
export type Refilling = {
  readonly root: Bough;
  readonly rest: LayoutNode;
  readonly stock: Stock;
  readonly job: Job;
  readonly limits: Limits;
  /** Most seams that may be added. */
  readonly joins: number;
};

export function refillingOf(
  root: Bough,
  { job, limits, joins }: Pick<Refilling, "job" | "limits" | "joins">,
): Refilling {
  const rest = layoutFrom(root, job);
  const { width, height } = rest;
  const { heap, begun } = heapBeside({ kind: "stays", node: rest, width, height }, job);
  return { root, rest, stock: stockOf(heap, [], begun), job, limits, joins };
}

/** Plain cloth in the pieced regions that is large enough for a piece, the largest first. */
export function gapsIn(root: Bough, { smallest }: Limits): readonly Way[] {
  const gaps: { way: Way; area: number }[] = [];
  const look = (bough: Bough, way: Way): void => {
    if (bough.kind === "fork") {
      for (const [at, part] of bough.parts.entries()) look(part, [...way, at]);
      return;
    }
    const { width, height } = bough;
    if (isFixed(bough) || clothIn(bough) === null || Math.min(width, height) < smallest) return;
    gaps.push({ way, area: width * height });
  };
  look(root, []);
  return gaps.sort((one, other) => other.area - one.area).map(({ way }) => way);
}

/** Layouts in which a gap is pieced from what lies unused. */
export function* refilled(gap: Way, refilling: Refilling): Generator<Bough> {
  const { root, rest, stock, job, limits, joins } = refilling;
  const part = partAt(root, gap);
  const cloth = part === undefined ? null : clothIn(part);
  if (part === undefined || cloth === null || stock.lots.length === 0) return;
  for (const twig of fillings(stock, part, { job, mostLeaves: joins + 1 })) {
    const filling = settleOne(mended(twig, stock), cloth.fabric, { rest, job });
    yield replacedAt(root, gap, boughOf(filling, part.spot, job), limits.joiner);
  }
}

type Filling = { readonly job: Job; readonly mostLeaves: number };

/** What a few short searches find on their way. */
function* fillings(
  stock: Stock,
  { width, height }: Bough,
  { job: { step }, mostLeaves }: Filling,
): Generator<Twig> {
  const space = { width: width / step, height: height / step, allows: () => true };
  for (let seed = 1; seed <= searches; seed++) {
    const search = startSearch(stock, [space], { seed, effort: moves, mostLeaves });
    let last: Twig | undefined;
    for (let turn = 0; turn <= turns; turn++) {
      const [twig] = search.best;
      if (twig !== undefined && twig !== last && !isPlain(twig)) yield twig;
      last = twig;
      search.step(moves / turns);
    }
  }
}

function isPlain(twig: Twig): boolean {
  return twig.kind === "leaf" && twig.face === null;
}
