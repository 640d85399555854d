import { type Eye, inch } from "./fault.ts";
import type { Cell } from "./scene.ts";

/** Of her leftovers, in square inches; what she wants in counts more, and what is sewn into units. */
export function usedIn(cells: Iterable<Cell>, eye: Eye): number {
  let sum = 0;
  for (const { node, cloth, inSet } of cells) {
    if (cloth !== null) continue;
    const area = (node.width / inch) * (node.height / inch);
    sum += area * worthOf(node, eye) + (inSet ? area + 40 : node.kind === "piece" ? 0 : area + 150);
    if (node.kind === "piece" && eye.pieces.get(node.piece)?.use === "must") sum += 1000;
  }
  return sum;
}

function worthOf(node: Cell["node"], { pieces }: Eye): number {
  return node.kind === "piece" && pieces.get(node.piece)?.use === "first" ? 3 : 1;
}
