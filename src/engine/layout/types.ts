import type { ClothRole, JoinDirection } from "../back/index.ts";
import type { Cut, Finished, Length } from "../length/index.ts";

/** Quarter turns, clockwise. */
export type Quarter = 0 | 1 | 2 | 3;

type Cell = { readonly width: Finished; readonly height: Finished };

/**
 * Parts joined by straight, full-length seams: left to right (`beside`) or top to bottom (`below`). `seam` is the
 * allowance of its seams: the plain seam where all parts are cloth, else the piecing seam. A part that is a join of
 * the same direction has another seam or a pattern of its own, else it would have been flattened into this one.
 */
export type JoinNode = Cell & {
  readonly kind: "join";
  readonly direction: JoinDirection;
  readonly seam: Length;
  /** Names a set of like pieces, such as `squares` or `strip-set`. */
  readonly pattern?: string;
  readonly parts: readonly LayoutNode[];
};

/**
 * By how much more than its cut size a part is cut on that side: next to a long join one part is left long, and
 * trimmed once that join is sewn. Never less than `leastLeftLong`.
 */
export type LeftLong = { readonly width?: Length; readonly height?: Length };

/** One leftover, trimmed to its cell. */
export type PieceNode = Cell & {
  readonly kind: "piece";
  readonly piece: string;
  /** Width and height changed places. */
  readonly turned: boolean;
  /** How a half-square triangle lies. */
  readonly quarter?: Quarter;
  /** Which one of the row this cell comes from; only where a piece is cut into several cells. */
  readonly copy?: number;
  readonly leftLong?: LeftLong;
};

/** Whatever has a diagonal inside and is sewn before it is laid. Cloth is given in cut sizes. */
export type UnitNode = Cell & {
  readonly kind: "unit";
  readonly pattern: string;
  readonly rotations?: readonly Quarter[];
  readonly pieces: readonly { readonly piece: string; readonly count: number }[];
  readonly cloth: readonly UnitCloth[];
};

export type UnitCloth = {
  readonly fabric: string;
  readonly source: ClothSource;
  readonly width: Cut;
  readonly height: Cut;
  readonly count: number;
};

/** Crumbs sewn by eye and trimmed to one size. */
export type SlabNode = Cell & {
  readonly kind: "slab";
  readonly crumbs?: string;
  readonly pieces?: readonly { readonly piece: string; readonly count: number }[];
};

export type ClothSource = "buy" | { readonly piece: string; readonly copy: number };

/** Plain cloth, cut from a length she has or from cloth to buy. */
export type ClothNode = Cell & {
  readonly kind: "cloth";
  readonly role: ClothRole;
  readonly fabric: string;
  readonly source: ClothSource;
  readonly leftLong?: LeftLong;
};

export type LeafNode = PieceNode | UnitNode | SlabNode | ClothNode;
/** The slicing tree. All sizes are finished sizes. */
export type LayoutNode = JoinNode | LeafNode;

/** The seam allowances round a node: what its four sides are sewn with. */
export type Seams = {
  readonly left: Length;
  readonly right: Length;
  readonly top: Length;
  readonly bottom: Length;
};
