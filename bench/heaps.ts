import { readFileSync } from "node:fs";
import { join } from "node:path";
import { benchFolder } from "./commandLine.ts";

export const dataFolder = join(benchFolder, "data");

export type DenseHeap = {
  readonly name: string;
  readonly n: number;
  readonly ratio: number;
  readonly seed: number;
  /** Edge to edge, as the command line takes it. */
  readonly back: string;
};

type DenseEntry = { readonly name: string; readonly n: number; readonly ratio: number; readonly back: Pair };
type Pair = readonly [number, number];

export function denseHeaps(seeds: readonly number[]): DenseHeap[] {
  const entries: DenseEntry[] = readJson("heaps/dense/index.json");
  return entries
    .map(({ name, n, ratio, back }) => ({ name, n, ratio, seed: seedIn(name), back: backFor(back) }))
    .filter(({ seed }) => seeds.includes(seed))
    .sort((a, b) => a.n - b.n || a.ratio - b.ratio || a.seed - b.seed);
}

/** The index gives the region to fill; the binding takes a quarter of an inch on each side of it. */
function backFor([width, height]: Pair): string {
  return `${width + 0.5}x${height + 0.5}`;
}

function seedIn(name: string): number {
  return Number(name.split("_s")[1]);
}

export type Strips = "cut" | "whole";

/** Its strips may be cut apart, or give one cell each. */
export function denseTable(name: string, strips: Strips): string {
  const table = readFileSync(join(dataFolder, "heaps", "dense", `${name}.csv`), "utf8");
  return strips === "cut" ? table : table.replaceAll(/,cut(?=\r?$)/gm, ",trim");
}

export type RealHeap = {
  readonly name: string;
  readonly top: Pair;
  readonly method: string;
  readonly back: Pair;
  readonly pieces: number;
  readonly lengths: number;
};

export function realHeaps(): RealHeap[] {
  return readJson("heaps/index.json");
}

export function realTable(name: string): string {
  return readFileSync(join(dataFolder, "heaps", `${name}.csv`), "utf8");
}

/** Sizes in eighths of an inch; a band is a region, finished. */
export type Leftovers = {
  readonly n: number;
  readonly bands: readonly { readonly ratio: number; readonly w: number; readonly h: number }[];
  readonly pieces: readonly { readonly kind: string; readonly cutW: number; readonly cutH: number }[];
};

export const leftoverCounts = [20, 60, 150, 300] as const;

export function leftoversOf(n: number): Leftovers {
  return readJson(`leftovers/leftovers-n${n}-s1.json`);
}

/** As in the dense heaps: a block may be trimmed. */
export function leftoversTable({ pieces }: Leftovers, strips: Strips): string {
  const rows = pieces.map(({ kind, cutW, cutH }) => {
    const keep = kind === "strip" && strips === "cut" ? "cut" : "trim";
    return `${kind === "irregular" ? "rectangle" : kind},${cutW / 8},${cutH / 8},1,${keep}`;
  });
  return `kind,width,height,count,keep\n${rows.join("\n")}\n`;
}

/** A small heap of which the most that can be placed untrimmed is proved. Finished sizes in eighths of an inch. */
export type ProvedHeap = {
  readonly name: string;
  readonly W: number;
  readonly H: number;
  readonly items: readonly { readonly w: number; readonly h: number; readonly copies: number }[];
  readonly optimal: number;
};

export function provedHeaps(): ProvedHeap[] {
  const { instances }: { instances: ProvedHeap[] } = readJson("leftovers-small-proved.json");
  return instances;
}

/** A problem of the literature whose optimum is proved. Whole units. */
export type PublishedProblem = {
  readonly name: string;
  readonly W: number;
  readonly H: number;
  readonly items: readonly {
    readonly w: number;
    readonly h: number;
    readonly copies: number;
    readonly profit: number;
  }[];
  readonly optimal: number;
  /** Our own computation; null: it did not come to its end. */
  readonly optimalWithRotation: number | null;
  readonly source: string;
};

export function publishedProblems(): PublishedProblem[] {
  const { instances }: { instances: PublishedProblem[] } = readJson("guillotine-knapsack-published.json");
  return instances;
}

/**
 * Cut sizes are the finished ones and two seams; nothing may be trimmed. `eighth` is how many inches stand for an
 * eighth of the data.
 */
export function provedTable({ items }: ProvedHeap, eighth: number): string {
  const rows = items.map(
    ({ w, h, copies }) => `rectangle,${w * eighth + 0.5},${h * eighth + 0.5},${copies},whole`,
  );
  return `kind,width,height,count,keep\n${rows.join("\n")}\n`;
}

/** The back, edge to edge, round a region of so many eighths, `eighth` inches each. */
export function backAround(width: number, height: number, eighth = 1 / 8): string {
  return `${width * eighth + 0.5}x${height * eighth + 0.5}`;
}

/** Our own file, of the shape the caller names. */
export function readJson<T>(path: string): T {
  return JSON.parse(readFileSync(join(dataFolder, path), "utf8"));
}
