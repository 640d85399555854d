import type { Candidates } from "./candidates.ts";
import type { EndToEnd } from "./endToEnd.ts";
import type { Lie, Lies } from "./lies.ts";
import type { Pool } from "./pool.ts";
import type { Random } from "./random.ts";
import type { Face, Stock } from "./stock.ts";
import type { Sawmill, Twig } from "./twig.ts";

/** What a strategy works with while it fills one region. */
export type Filling = {
  readonly stock: Stock;
  readonly pool: Pool;
  readonly random: Random;
  readonly twigs: Sawmill;
  readonly ends: EndToEnd;
  /**
   * Looks for what fits among the few leftovers that lie open, not in the whole heap, of which most is in its place. More
   * fits then, and more closely.
   */
  readonly dense: boolean;
  readonly candidates: Candidates;
  /** Faces that may go into this region. */
  readonly faces: readonly Face[];
  /** The same faces in a row that runs left to right, and in one that runs top to bottom. */
  readonly beside: Lies;
  readonly below: Lies;
  /** Fills a smaller region by whatever strategy suits it. Always gives a twig of exactly this size. */
  readonly fill: (width: number, height: number) => Twig;
};

/** A way to fill a region: a twig of exactly that size, or null when this way leads nowhere (the pool is then as before). */
export type Strategy = (filling: Filling, width: number, height: number) => Twig | null;

export function place(filling: Filling, face: Face, width: number, height: number): Twig {
  filling.pool.take(face, width, height);
  return filling.twigs.leaf(face, width, height);
}

/** The longest this can be in a row now: a strip only gives what is left of it. */
export function longest(pool: Pool, lie: Lie): number {
  return lie.freeAlong && lie.lot.roll ? Math.min(lie.along, pool.reach(lie.lot)) : lie.along;
}
