import type { Cut, Finished, Length, Size } from "../length/index.ts";
import type { Turn } from "./fourHalfSquares.ts";

type Cell = Size<Finished>;

/** A unit as it is sewn, in the shape of the layout's own nodes: it can be laid as it is. */
export type Made = MadeJoin | MadePiece | MadeUnit | MadeSlab | MadeCloth;

export type MadeJoin = Cell & {
  readonly kind: "join";
  readonly direction: "beside" | "below";
  readonly seam: Length;
  readonly pattern?: string;
  readonly parts: readonly Made[];
};

export type MadePiece = Cell & {
  readonly kind: "piece";
  readonly piece: string;
  readonly turned: boolean;
  readonly quarter?: Turn;
};

export type MadeUnit = Cell & {
  readonly kind: "unit";
  readonly pattern: string;
  readonly rotations?: readonly Turn[];
  readonly pieces: readonly Taken[];
  readonly cloth: readonly OfferCloth[];
};

export type MadeSlab = Cell & {
  readonly kind: "slab";
  readonly crumbs?: string;
  readonly pieces?: readonly Taken[];
};

export type MadeCloth = Cell & {
  readonly kind: "cloth";
  readonly role: "coping";
  readonly fabric: string;
  readonly source: "buy";
};

/** So many of one row of the heap. */
export type Taken = { readonly piece: string; readonly count: number };

/** Plain cloth that a unit takes beside her pieces, in cut size. */
export type OfferCloth = Size<Cut> & {
  readonly fabric: string;
  readonly source: "buy";
  readonly count: number;
};

/** A unit that her heap can give: a ready rectangle, finished, on the ruler's step. */
export type Offer = {
  readonly pattern: string;
  readonly width: Finished;
  readonly height: Finished;
  /** How half-square triangles lie, in the order of `pieces`. */
  readonly rotations?: readonly Turn[];
  /** What one of it takes; each row once. */
  readonly pieces: readonly Taken[];
  readonly cloth: readonly OfferCloth[];
  /** How many of it the whole heap gives, if nothing else is made. */
  readonly atMost: number;
  /** Seams to sew inside one of it; none for a slab, which counts by its area. */
  readonly joins: number;
  /** Each fabric that shows in it, once. */
  readonly fabrics: readonly string[];
  /** Its outer edges may be bias: never at the edge of the back. */
  readonly insideOnly: boolean;
  readonly made: Made;
};

/** What the units are for. */
export type UnitWish = {
  /** Leftovers go in freely, all over the back. */
  readonly allOver: boolean;
  /** Another seed sets the same triangles another way. */
  readonly seed: number;
  /** The pieced parts of the back. */
  readonly rooms: readonly Size<Finished>[];
};

/** A unit that is to be made so often. `ways`: as it is, or lying on its side; each takes the same pieces. */
export type ChosenUnit = { readonly ways: readonly [Offer, ...Offer[]]; readonly count: number };
