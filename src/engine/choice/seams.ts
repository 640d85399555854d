import type { LayoutNode } from "../layout/index.ts";

/** A straight seam in finished coordinates, from the layout's upper left corner: at `at`, from `from` to `to` along it. */
export type Seam = {
  /** It runs left to right; else top to bottom. */
  readonly across: boolean;
  readonly at: number;
  readonly from: number;
  readonly to: number;
};

/**
 * The seams that join the parts of a layout, as one sees them on the back. What is sewn inside a unit before it is
 * laid is a pattern of its own and no seam of the composition.
 */
export function seamsOf(layout: LayoutNode): readonly Seam[] {
  const found: Seam[] = [];
  collect(layout, { x: 0, y: 0 }, found);
  return found;
}

function collect(node: LayoutNode, { x, y }: { x: number; y: number }, found: Seam[]): void {
  if (node.kind !== "join") return;
  const beside = node.direction === "beside";
  let along = beside ? x : y;
  node.parts.forEach((part, index) => {
    if (index > 0) found.push(seamAt(along, beside ? [y, node.height] : [x, node.width], !beside));
    collect(part, beside ? { x: along, y } : { x, y: along }, found);
    along += beside ? part.width : part.height;
  });
}

function seamAt(at: number, [from, long]: readonly [number, number], across: boolean): Seam {
  return { across, at, from, to: from + long };
}
