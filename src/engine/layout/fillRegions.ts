import type { Region } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";
import { joinLimit } from "../work/index.ts";
import { clashOf } from "./contrast.ts";
import { polish } from "./polish.ts";
import { randomFrom } from "./random.ts";
import { type Search, type Space, startSearch } from "./search.ts";
import { settle } from "./settle.ts";
import { stockOf } from "./stock.ts";
import { coveredIn, thinned } from "./thinned.ts";
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
};

/** Starts filling the pieced regions of a composition with her leftovers. */
export function fillRegions(
  region: Region,
  job: Job,
  { seed, effort }: { readonly seed: number; readonly effort: number },
): RegionSearch {
  const stock = stockOf(job, blocksIn(region, new Map()));
  const spaces = spacesIn(region, job);
  const mostLeaves = joinLimit(job.time) + 1 - fixedLeaves(region);
  const search = startSearch(stock, spaces, { seed, effort, mostLeaves });
  const arrange = (twigs: readonly Twig[]) =>
    polish(twigs, {
      stock,
      clash: clashOf(job),
      cloth: gapCloth(region),
      random: randomFrom(seed),
      tries: polishTries(twigs),
    });
  return watched(search, () => settle(region, arrange(thinned(search.best, stock, mostLeaves)), job));
}

// Looking at the arrangement takes time with the square of its cells; large ones get fewer looks.
function polishTries(twigs: readonly Twig[]): number {
  const largest = Math.max(0, ...twigs.map((twig) => twig.leaves));
  return Math.min(1500, Math.round(30_000_000 / (largest + 20) ** 2));
}

function gapCloth(region: Region): string[] {
  if (region.kind === "join") return region.parts.flatMap(gapCloth);
  return region.kind === "pieced" ? [region.fabric] : [];
}

function watched(search: Search, layout: () => LayoutNode): RegionSearch {
  return {
    step: (moves) => search.step(moves),
    get moves() {
      return search.moves;
    },
    get done() {
      return search.done;
    },
    get covered() {
      return coveredShare(search.best);
    },
    layout,
  };
}

function coveredShare(twigs: readonly Twig[]): number {
  const whole = twigs.reduce((sum, twig) => sum + twig.width * twig.height, 0);
  return whole === 0 ? 0 : twigs.reduce((sum, twig) => sum + coveredIn(twig), 0) / whole;
}

function blocksIn(region: Region, counts: Map<string, number>): Map<string, number> {
  if (region.kind === "join") for (const part of region.parts) blocksIn(part, counts);
  if (region.kind === "block") counts.set(region.piece, (counts.get(region.piece) ?? 0) + 1);
  return counts;
}

function spacesIn(region: Region, job: Job): Space[] {
  if (region.kind === "join") return region.parts.flatMap((part) => spacesIn(part, job));
  if (region.kind !== "pieced") return [];
  return [{ width: region.width / job.step, height: region.height / job.step, allows: () => true }];
}

function fixedLeaves(region: Region): number {
  if (region.kind === "join") return region.parts.reduce((sum, part) => sum + fixedLeaves(part), 0);
  return region.kind === "pieced" ? 0 : 1;
}
