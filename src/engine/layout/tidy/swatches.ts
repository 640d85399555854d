import { colourDifference, type Fabric, fabricValue, isUndyed, type Job } from "../../cloth/index.ts";
import type { LeafNode } from "../types.ts";
import { type Eye, inch } from "./fault.ts";
import { after, type Cell, type Scene } from "./scene.ts";

/** An edge that two cells share; `long` in inches. */
export type Edge = { readonly one: number; readonly other: number; readonly long: number };

/** Fabrics by number, and what an inch of edge between two of them costs. */
export type Swatches = {
  /** −1: it isn't known what the cell is made of. */
  readonly numberOf: (node: LeafNode) => number;
  readonly price: (one: number, other: number) => number;
  /** Two fabrics of known colour that aren't told apart across a room. */
  readonly isWeak: (one: number, other: number) => boolean;
  /** L* of a fabric; null: its colour isn't known. */
  readonly valueOf: (fabric: number) => number | null;
};

/** Like that touches like is dearer than anything else, so that nothing is bought with it. */
const likePrice = 200;
/** Where she wants strong contrast, an edge that isn't told apart across a room. */
const weakPrice = 1;
/** Where fabrics are to blend, the two colours that are furthest apart. */
const leapPrice = 0.25;
/** Told apart across a room: in value or else in colour (CIEDE2000). Ours, as no threshold for cloth is published. */
const apart = { value: 10, colour: 20 } as const;
/** CIEDE2000 of colours that are as far apart as fabrics in one quilt mostly are. */
const farApart = 60;

export function swatchesOf({ job, areLike }: Eye): Swatches {
  const fabrics = new Map(job.pieces.map((piece) => [piece.id, piece.fabric]));
  const numbers = new Map(job.fabrics.map(({ id }, at) => [id, at]));
  const prices = job.fabrics.map((one) =>
    job.fabrics.map((other) => (areLike(one.id, other.id) ? likePrice : 0) + unlikePrice(one, other, job)),
  );
  const weak = job.fabrics.map((one) => job.fabrics.map((other) => isWeak(one, other)));
  const values = job.fabrics.map((fabric) => (fabric.colours.length === 0 ? null : fabricValue(fabric)));
  return {
    numberOf: (node) => numbers.get(fabricIn(node, fabrics) ?? "") ?? -1,
    price: (one, other) => prices[one]?.[other] ?? 0,
    isWeak: (one, other) => weak[one]?.[other] ?? false,
    valueOf: (fabric) => values[fabric] ?? null,
  };
}

function fabricIn(node: LeafNode, fabrics: ReadonlyMap<string, string>): string | undefined {
  switch (node.kind) {
    case "piece":
      return fabrics.get(node.piece);
    case "unit":
      return fabrics.get(node.pieces[0]?.piece ?? "");
    case "slab":
      return fabrics.get(node.crumbs ?? node.pieces?.[0]?.piece ?? "");
    case "cloth":
      return node.fabric;
  }
}

function unlikePrice(one: Fabric, other: Fabric, { contrast }: Job): number {
  const difference = differenceOf(one, other);
  if (difference === null) return 0;
  switch (contrast) {
    case "strong":
      return isWeak(one, other) ? weakPrice : 0;
    case "blend":
      return leapPrice * Math.min(1, difference / farApart);
    case "mixed":
      return 0;
  }
}

function isWeak(one: Fabric, other: Fabric): boolean {
  const difference = differenceOf(one, other);
  if (difference === null || difference >= apart.colour) return false;
  return Math.abs(fabricValue(one) - fabricValue(other)) < apart.value;
}

/** CIEDE2000; null where a colour isn't known. */
function differenceOf(one: Fabric, other: Fabric): number | null {
  const [a, b] = [one.colours[0]?.lab, other.colours[0]?.lab];
  if (a === undefined || b === undefined || isUndyed(one) || isUndyed(other)) return null;
  return colourDifference(a, b);
}

/** The edges of each cell, by number; plain cloth beside plain cloth is meant so. */
export function edgesOf({ cells, sides }: Scene): readonly (readonly Edge[])[] {
  const numbers = new Map(cells.map((cell, at) => [cell, at]));
  const found: Edge[][] = cells.map(() => []);
  for (const [one, cell] of cells.entries()) {
    for (const wide of [true, false]) {
      for (const next of after(cell, wide, sides)) {
        const other = numbers.get(next);
        if (other === undefined || (cell.cloth !== null && next.cloth !== null)) continue;
        const edge = { one, other, long: shared(cell, next, wide) / inch };
        found[one]?.push(edge);
        found[other]?.push(edge);
      }
    }
  }
  return found;
}

function shared(cell: Cell, next: Cell, wide: boolean): number {
  return wide
    ? Math.min(cell.bottom, next.bottom) - Math.max(cell.y, next.y)
    : Math.min(cell.right, next.right) - Math.max(cell.x, next.x);
}
