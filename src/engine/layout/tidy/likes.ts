import type { LeafNode } from "../types.ts";
import type { Eye, Fault } from "./fault.ts";
import { after, type Cell, type Scene } from "./scene.ts";

/** How far these cells touch their like to the right and below, in all. */
export function likeLength(scene: Pick<Scene, "cells" | "sides">, eye: Eye): number {
  let long = 0;
  eachLike(scene, eye, (cell, other, wide) => {
    long += wide
      ? Math.min(cell.bottom, other.bottom) - Math.max(cell.y, other.y)
      : Math.min(cell.right, other.right) - Math.max(cell.x, other.x);
  });
  return long;
}

export function likesIn(scene: Scene, eye: Eye): Fault[] {
  const faults: Fault[] = [];
  eachLike(scene, eye, (cell, other) => {
    faults.push({ kind: "like", ways: [cell.way, other.way], by: [], wide: null });
  });
  return faults;
}

type Touch = (cell: Cell, other: Cell, wide: boolean) => void;

function eachLike({ cells, sides }: Pick<Scene, "cells" | "sides">, eye: Eye, touch: Touch): void {
  for (const cell of cells) {
    const own = fabricOf(cell.node, eye);
    if (own === undefined) continue;
    for (const wide of [true, false]) {
      for (const other of after(cell, wide, sides)) {
        if (cell.cloth !== null && other.cloth !== null) continue;
        const theirs = fabricOf(other.node, eye);
        if (theirs !== undefined && eye.areLike(own, theirs)) touch(cell, other, wide);
      }
    }
  }
}

function fabricOf(node: LeafNode, { pieces }: Eye): string | undefined {
  switch (node.kind) {
    case "piece":
      return pieces.get(node.piece)?.fabric;
    case "unit":
      return pieces.get(node.pieces[0]?.piece ?? "")?.fabric;
    case "slab":
      return node.pieces === undefined ? undefined : pieces.get(node.pieces[0]?.piece ?? "")?.fabric;
    case "cloth":
      return node.fabric;
  }
}
