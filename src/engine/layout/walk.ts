import type { Job } from "../cloth/index.ts";
import { add, type Cut, type Length, length, type Size, toCut } from "../length/index.ts";
import type { JoinNode, LayoutNode, LeafNode, LeftLong, Seams } from "./types.ts";

/** Which part of which part: indices from the layout down to a node; empty for the layout itself. */
export type Path = readonly number[];

/** A node where it lies. `x`, `y`: of its cell, finished, from the layout's upper left corner. */
export type Placed<N extends LayoutNode = LayoutNode> = {
  readonly node: N;
  readonly seams: Seams;
  readonly x: Length;
  readonly y: Length;
  /** The cell and the seam on each of its four sides: what it measures before it is sewn in. */
  readonly cutWidth: Cut;
  readonly cutHeight: Cut;
  readonly path: Path;
};

export type PlacedLeaf = Placed<LeafNode>;

/** What the edge of the back is sewn with: the binding takes the piecing seam on all four sides. */
export function outerSeams(job: Pick<Job, "seam">): Seams {
  return { left: job.seam, right: job.seam, top: job.seam, bottom: job.seam };
}

/** The seams round part `index` of a join whose own seams are `seams`: the nearest join on each side decides. */
export function seamsOfPart(join: JoinNode, index: number, seams: Seams): Seams {
  const before = index > 0;
  const after = index < join.parts.length - 1;
  if (join.direction === "beside") {
    return { ...seams, left: before ? join.seam : seams.left, right: after ? join.seam : seams.right };
  }
  return { ...seams, top: before ? join.seam : seams.top, bottom: after ? join.seam : seams.bottom };
}

/** What a node measures before it is sewn in: its cell and the seam on each of its four sides. */
export function cutSizeOf(node: LayoutNode, seams: Seams): Size<Cut> {
  return {
    width: toCut(node.width, seams.left, seams.right),
    height: toCut(node.height, seams.top, seams.bottom),
  };
}

/** Every node of the layout, a join before its parts, parts left to right and top to bottom. */
export function nodesOf(layout: LayoutNode, job: Pick<Job, "seam">): readonly Placed[] {
  return walked(layout, job).nodes;
}

/** Every leaf of the layout, left to right and top to bottom within each join. */
export function leavesOf(layout: LayoutNode, job: Pick<Job, "seam">): readonly PlacedLeaf[] {
  return walked(layout, job).leaves;
}

type Walk = {
  readonly seam: Length;
  readonly nodes: readonly Placed[];
  readonly leaves: readonly PlacedLeaf[];
};

// Steps, cutting, buying and figures of one plan all walk the same layout, which never changes.
const walks = new WeakMap<LayoutNode, Walk>();

function walked(layout: LayoutNode, { seam }: Pick<Job, "seam">): Walk {
  const before = walks.get(layout);
  if (before?.seam === seam) return before;
  const nodes: Placed[] = [];
  visit(place(layout, outerSeams({ seam }), { x: length(0), y: length(0) }, []), nodes);
  const leaves = nodes.filter((placed): placed is PlacedLeaf => placed.node.kind !== "join");
  const walk = { seam, nodes, leaves };
  walks.set(layout, walk);
  return walk;
}

/** The same tree with each leaf exchanged for what `change` gives; leaves come in the order of `leavesOf`. */
export function mapLeaves(layout: LayoutNode, change: (leaf: LeafNode) => LayoutNode): LayoutNode {
  if (layout.kind !== "join") return change(layout);
  return { ...layout, parts: layout.parts.map((part) => mapLeaves(part, change)) };
}

/** The same with nothing left long. */
export function withoutGivers(layout: LayoutNode): LayoutNode {
  return mapLeaves(layout, (leaf) => {
    if (leaf.kind !== "piece" && leaf.kind !== "cloth") return leaf;
    const { leftLong, ...bare } = leaf;
    return leftLong === undefined ? leaf : bare;
  });
}

/** What a leaf is cut to, and how much of it is left long beside a long join. */
export function takenSizeOf({ node, cutWidth, cutHeight }: PlacedLeaf): Size<Cut> {
  const { width, height } = leftLongOf(node);
  return { width: add(cutWidth, width ?? none), height: add(cutHeight, height ?? none) };
}

export function leftLongOf(node: LeafNode): LeftLong {
  return node.kind === "piece" || node.kind === "cloth" ? (node.leftLong ?? {}) : {};
}

const none = length(0);

type Point = { readonly x: Length; readonly y: Length };

function place(node: LayoutNode, seams: Seams, at: Point, path: Path): Placed {
  const { width, height } = cutSizeOf(node, seams);
  return { node, seams, ...at, cutWidth: width, cutHeight: height, path };
}

function visit(placed: Placed, found: Placed[]): void {
  found.push(placed);
  for (const part of partsOf(placed)) visit(part, found);
}

/** The parts of a join where they lie, left to right or top to bottom; a leaf has none. */
export function partsOf({ node, seams, x, y, path }: Placed): readonly Placed[] {
  if (node.kind !== "join") return [];
  let at: Point = { x, y };
  return node.parts.map((part, index) => {
    const placed = place(part, seamsOfPart(node, index, seams), at, [...path, index]);
    at =
      node.direction === "beside"
        ? { x: add(at.x, part.width), y: at.y }
        : { x: at.x, y: add(at.y, part.height) };
    return placed;
  });
}

/** The node that a path leads to, without a walk over all others; undefined where it leads nowhere. */
export function placedAt(layout: LayoutNode, path: Path, job: Pick<Job, "seam">): Placed | undefined {
  let at: Placed | undefined = place(layout, outerSeams(job), { x: length(0), y: length(0) }, []);
  for (const index of path) at = at === undefined ? undefined : partsOf(at)[index];
  return at;
}
