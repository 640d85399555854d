import type { Knapsack } from "./knapsack.ts";
import type { Pool } from "./pool.ts";
import type { Random } from "./random.ts";
import type { Face, Lot, Stock } from "./stock.ts";
import type { Sawmill, Twig } from "./twig.ts";

/** What a strategy works with while it fills one region. */
export type Filling = {
  readonly stock: Stock;
  readonly pool: Pool;
  readonly random: Random;
  readonly twigs: Sawmill;
  readonly knapsack: Knapsack;
  /** Faces that may go into this region. */
  readonly faces: readonly Face[];
  /** Fills a smaller region by whatever strategy suits it. Always gives a twig of exactly this size. */
  readonly fill: (width: number, height: number) => Twig;
};

/** A way to fill a region: a twig of exactly that size, or null when this way leads nowhere (the pool is then as before). */
export type Strategy = (filling: Filling, width: number, height: number) => Twig | null;

/** Lying in a row, is this what the row is long in, or what it is thick in? `beside`: the row runs left to right. */
export function alongOf(face: Face, beside: boolean): number {
  return beside ? face.maxWidth : face.maxHeight;
}

export function leastAlong(face: Face, beside: boolean): number {
  return beside ? face.minWidth : face.minHeight;
}

export function acrossOf(face: Face, beside: boolean): number {
  return beside ? face.maxHeight : face.maxWidth;
}

export function leastAcross(face: Face, beside: boolean): number {
  return beside ? face.minHeight : face.minWidth;
}

export function isFreeAlong(face: Face, beside: boolean): boolean {
  return face.along === (beside ? "width" : "height");
}

export function place(filling: Filling, face: Face, width: number, height: number): Twig {
  filling.pool.take(face, width, height);
  return filling.twigs.leaf(face, width, height);
}

/** The longest this face can be in a row now: a strip only gives what is left of it. */
export function longestAlong(filling: Filling, face: Face, beside: boolean): number {
  const along = alongOf(face, beside);
  if (!face.lot.roll || !isFreeAlong(face, beside)) return along;
  return Math.min(along, filling.pool.reach(face.lot));
}

export function isLeft(pool: Pool, lot: Lot, smallest: number): boolean {
  const face = lot.faces[0];
  return face !== undefined && pool.supply(face, smallest) > 0;
}
