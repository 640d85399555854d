import type { Finished } from "../length/index.ts";

export const joinDirections = ["beside", "below"] as const;
export type JoinDirection = (typeof joinDirections)[number];

export const clothRoles = ["plain", "spacer", "coping"] as const;
export type ClothRole = (typeof clothRoles)[number];

type Cell = { readonly width: Finished; readonly height: Finished };

/**
 * A style made to measure: plain cloth in its place and, where leftovers go, regions for the solver to fill.
 * All sizes are finished sizes and tile the layout exactly.
 */
export type Region = JoinRegion | ClothRegion | PiecedRegion | BlockRegion | OnPointRegion;

export type JoinRegion = Cell & {
  readonly kind: "join";
  readonly direction: JoinDirection;
  readonly pattern?: string;
  readonly parts: readonly Region[];
};

export type ClothRegion = Cell & {
  readonly kind: "cloth";
  readonly role: ClothRole;
  /** A fabric's id: of one of her lengths, or of the cloth to buy. */
  readonly fabric: string;
};

export type PiecedRegion = Cell & {
  readonly kind: "pieced";
  /** Fabric of the cloth that closes its gaps. */
  readonly fabric: string;
};

/** One of her blocks in a place of its own. */
export type BlockRegion = Cell & {
  readonly kind: "block";
  readonly piece: string;
  readonly turned: boolean;
};

/** Her square blocks of one size on their points, in a line along its longer side, between triangles of plain cloth. */
export type OnPointRegion = Cell & {
  readonly kind: "on-point";
  /** The block that stands in each place. */
  readonly blocks: readonly string[];
  readonly fabric: string;
};
