import { type LayoutNode, type LeafNode, type Seams, seamsOfPart } from "../layout/index.ts";
import { add, type Length, length, subtract } from "../length/index.ts";
import { type Cloths, patchesOf } from "./patches.ts";
import type { Patch, Point, Rect, Seam, Shape, ShapeLabel } from "./types.ts";

export type Drawn = { readonly shapes: readonly Shape[]; readonly seams: readonly Seam[] };

/**
 * A node as cloth and seams, with its cell's upper left corner at `at`. `raw` is how much of each outer allowance
 * shows: at the edge of the back, or of a part that isn't joined on yet, the cloth runs on as far.
 */
export function drawNode(node: LayoutNode, at: Point, raw: Seams, look: Look): Drawn {
  if (node.kind !== "join") return drawLeaf(node, widened(at, node, raw), look);
  const drawn: Drawn[] = [];
  const lines: Seam[] = [];
  const beside = node.direction === "beside";
  let corner = at;
  for (const [index, part] of node.parts.entries()) {
    drawn.push(drawNode(part, corner, seamsOfPart({ ...node, seam: none }, index, raw), look));
    if (index > 0) lines.push(joinLine(corner, widened(at, node, raw), beside, node.seam === look.plainSeam));
    corner = beside
      ? { ...corner, x: add(corner.x, part.width) }
      : { ...corner, y: add(corner.y, part.height) };
  }
  // The longest seams last, over the ends of the shorter ones.
  return {
    shapes: drawn.flatMap(({ shapes }) => shapes),
    seams: [...drawn.flatMap(({ seams }) => seams), ...lines],
  };
}

export type Look = { readonly cloths: Cloths; readonly plainSeam: Length };

const none = length(0);

function joinLine(corner: Point, whole: Rect, beside: boolean, plain: boolean): Seam {
  const kind = plain ? "plain" : "piecing";
  return beside
    ? { kind, x1: corner.x, y1: whole.y, x2: corner.x, y2: add(whole.y, whole.height) }
    : { kind, x1: whole.x, y1: corner.y, x2: add(whole.x, whole.width), y2: corner.y };
}

function widened(at: Point, node: LayoutNode, raw: Seams): Rect {
  return {
    x: subtract(at.x, raw.left),
    y: subtract(at.y, raw.top),
    width: add<Length>(node.width, raw.left, raw.right),
    height: add<Length>(node.height, raw.top, raw.bottom),
  };
}

function drawLeaf(node: LeafNode, rect: Rect, look: Look): Drawn {
  const patches = patchesOf(node, rect, look.cloths);
  const print = printOf(node, look.cloths);
  const shape: Shape = {
    kind: node.kind,
    label: labelOf(node),
    ...rect,
    ...(node.kind === "cloth" ? { role: node.role } : {}),
    ...(node.kind === "piece" ? { turned: node.turned } : {}),
    patches,
    ...(print ? { print } : {}),
  };
  return { shapes: [shape], seams: seamsInside(patches, rect, node.kind === "slab" ? "by-eye" : "inside") };
}

function labelOf(node: LeafNode): ShapeLabel {
  switch (node.kind) {
    case "piece":
      return { piece: node.piece, ...(node.copy === undefined ? {} : { copy: node.copy }) };
    case "cloth":
      return { cloth: node.fabric };
    case "unit":
      return { pattern: node.pattern };
    case "slab":
      return { slab: node.crumbs ?? null };
  }
}

/** A print runs along the piece's own height, so turning the piece turns it. */
function printOf(node: LeafNode, cloths: Cloths): Shape["print"] {
  if (node.kind !== "piece") return undefined;
  const direction = cloths.pieces.get(node.piece)?.direction ?? "none";
  return direction === "none" ? undefined : { direction, along: node.turned ? "width" : "height" };
}

function seamsInside(patches: readonly Patch[], rect: Rect, kind: Seam["kind"]): Seam[] {
  const seams = new Map<string, Seam>();
  for (const { outline } of patches) {
    for (const [index, from] of outline.entries()) {
      const to = outline[(index + 1) % outline.length] ?? from;
      if (isOnEdge(from, to, rect)) continue;
      // Both neighbours of a seam have it in their outline, one each way round.
      const [a, b] = from.x < to.x || (from.x === to.x && from.y < to.y) ? [from, to] : [to, from];
      seams.set(`${a.x} ${a.y} ${b.x} ${b.y}`, { kind, x1: a.x, y1: a.y, x2: b.x, y2: b.y });
    }
  }
  return [...seams.values()];
}

function isOnEdge(a: Point, b: Point, { x, y, width, height }: Rect): boolean {
  const along = (edge: number, from: number, to: number) => from === edge && to === edge;
  return (
    along(x, a.x, b.x) || along(x + width, a.x, b.x) || along(y, a.y, b.y) || along(y + height, a.y, b.y)
  );
}
