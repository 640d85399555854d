import { slabJoins } from "../../work/index.ts";
import type { LayoutNode } from "../types.ts";
import type { Bough } from "./bough.ts";

/** Seams to sew, as her time is counted: a slab's by its area. */
export function joinsIn(bough: Bough): number {
  if (bough.kind === "leaf") return joinsOfNode(bough.node);
  const before = joinsKnown.get(bough);
  if (before !== undefined) return before;
  const joins = bough.parts.reduce((sum, part) => sum + joinsIn(part), bough.parts.length - 1);
  joinsKnown.set(bough, joins);
  return joins;
}

const joinsKnown = new WeakMap<Bough, number>();

function joinsOfNode(node: LayoutNode): number {
  switch (node.kind) {
    case "join":
      return node.parts.reduce((sum, part) => sum + joinsOfNode(part), node.parts.length - 1);
    case "unit":
      return [...node.pieces, ...node.cloth].reduce((sum, { count }) => sum + count, -1);
    case "slab":
      return slabJoins(node);
    case "piece":
    case "cloth":
      return 0;
  }
}
