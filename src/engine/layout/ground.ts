import type { BlockRegion, ClothRegion, JoinDirection, OnPointRegion, PiecedRegion } from "../back/index.ts";
import type { Finished } from "../length/index.ts";
import type { LayoutNode } from "./types.ts";

/** What the solver starts from: a style made to measure, or a plan of hers in which some cells stay as they are. */
export type Ground = JoinGround | ClothRegion | PiecedRegion | BlockRegion | OnPointRegion | StayingGround;

type Cell = { readonly width: Finished; readonly height: Finished };

export type JoinGround = Cell & {
  readonly kind: "join";
  readonly direction: JoinDirection;
  readonly parts: readonly Ground[];
};

/** It is laid as it is. A cell cut off a strip names its copy here even where it is the only one. */
export type StayingGround = Cell & { readonly kind: "stays"; readonly node: LayoutNode };

/** All that stays, left to right and top to bottom within each join. */
export function stayingIn(ground: Ground): readonly LayoutNode[] {
  if (ground.kind === "join") return ground.parts.flatMap(stayingIn);
  return ground.kind === "stays" ? [ground.node] : [];
}
