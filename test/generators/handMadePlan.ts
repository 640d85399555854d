import type { Fabric, Piece, SizedPiece } from "../../src/engine/cloth/index.ts";
import {
  type ClothNode,
  figuresOf,
  type JoinNode,
  type LayoutNode,
  type PieceNode,
} from "../../src/engine/layout/index.ts";
import {
  areaOf,
  cut,
  finished,
  inches,
  length,
  type Size,
  unitsPerInch,
} from "../../src/engine/length/index.ts";
import type { Plan } from "../../src/engine/plan/index.ts";
import { stepsFor } from "../../src/engine/sewing/index.ts";

/**
 * A small back, 40 1/2 × 30 1/2 in, that a quilter can check by hand, with every kind of node in it:
 *
 *     | block | rectangle | 2 squares | strip | strip | unit, sewn triangle, cloth |   10 in
 *     |       |           |           |       |       | slab                       |
 *     | plain cloth from a length          25 in | plain cloth to buy       15 in |   20 in
 *
 * The plain cloth to buy is left an inch long on both sides: higher beside the other plain cloth, wider below the row.
 */
export function handMadePlan(): Plan {
  const layout = handMadeLayout();
  const job = { seam: inches(1, 4), pieces, top: null };
  const facts = {
    unit: "in",
    step: inches(1, 8),
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    floor: inches(5, 2),
    back: size(40.5, 30.5),
    fabrics,
    pieces,
    layout,
    unused,
    buy: [{ use: "plain", fabric: "plain", width: inches(42), length: inches(30) }],
  } as const;
  return {
    ...facts,
    top: { ...size(34.5, 24.5), method: "machine", extra: inches(3) },
    style: "insert-across",
    seed: 7,
    effort: 20_000,
    steps: stepsFor(layout, job),
    figures: { ...figuresOf(facts), cuts: 14, contrast: 21.5, minutes: [45, 90] },
  };
}

const unused = [
  { piece: "square-1", count: 1 },
  { piece: "rectangle-2", count: 2 },
  { piece: "rectangle-3", count: 1 },
  { piece: "triangle-1", count: 4 },
];

function handMadeLayout(): LayoutNode {
  const insert = join("beside", "1/4", [
    leaf("block-1", 10, 10),
    leaf("rectangle-1", 8, 10),
    { ...join("below", "1/4", [leaf("square-1", 5, 5), leaf("square-1", 5, 5)]), pattern: "squares" },
    { ...leaf("strip-1", 2, 10), copy: 1 },
    { ...leaf("strip-1", 2, 10), copy: 1 },
    join("below", "1/4", [madeParts(), { kind: "slab", crumbs: "crumbs-1", ...size(13, 5) }]),
  ]);
  const plain = join("beside", "1/2", [
    cloth("linen", { piece: "length-1", copy: 1 }, 25, 20),
    { ...cloth("plain", "buy", 15, 20), leftLong: { width: inches(1), height: inches(1) } },
  ]);
  return join("below", "1/4", [insert, plain]);
}

function madeParts(): JoinNode {
  return join("beside", "1/4", [
    {
      kind: "unit",
      pattern: "half-square-triangle",
      pieces: [{ piece: "triangle-1", count: 2 }],
      cloth: [],
      ...size(5, 5),
    },
    { ...leaf("half-square-triangle-1", 5, 5), quarter: 1 },
    { ...cloth("plain", "buy", 3, 5), role: "spacer" },
  ]);
}

function join(direction: JoinNode["direction"], seam: "1/4" | "1/2", parts: readonly LayoutNode[]): JoinNode {
  const sum = (side: "width" | "height") =>
    finished(length(parts.reduce((total, part) => total + part[side], 0)));
  const across = parts[0] ?? size(0, 0);
  const box =
    direction === "beside"
      ? { width: sum("width"), height: across.height }
      : { width: across.width, height: sum("height") };
  return { kind: "join", direction, seam: inches(1, seam === "1/4" ? 4 : 2), ...box, parts };
}

function leaf(piece: string, width: number, height: number): PieceNode {
  return { kind: "piece", piece, turned: false, ...size(width, height) };
}

function cloth(fabric: string, source: ClothNode["source"], width: number, height: number): ClothNode {
  return { kind: "cloth", role: "plain", fabric, source, ...size(width, height) };
}

function size(width: number, height: number): Size<PieceNode["width"]> {
  return { width: units(width), height: units(height) };
}

function units(inch: number): PieceNode["width"] {
  return finished(length(inch * unitsPerInch));
}

const fabrics: readonly Fabric[] = [
  { id: "plain", name: "Unbleached cotton", colour: "#e4dccb", colours: [] },
  { id: "linen", name: "Grey linen", colour: "#8c8a86", colours: [] },
  { id: "print", name: "Small print", colour: "#7a3344", colours: [] },
];

const pieces: readonly Piece[] = [
  sized({ id: "block-1", kind: "block", keep: "whole" }, 10.5, 10.5),
  // An eighth to trim on each dimension.
  sized({ id: "rectangle-1", direction: "one-way" }, 8.625, 10.625),
  sized({ id: "square-1", kind: "square", count: 3 }, 5.5, 5.5),
  // Two cells of 10 1/2 in, and 9 in left for the shelf.
  sized({ id: "strip-1", kind: "strip", keep: "cut" }, 2.5, 30),
  sized({ id: "triangle-1", kind: "triangle", count: 6 }, 5.875, 5.875),
  sized({ id: "half-square-triangle-1", kind: "half-square-triangle", keep: "whole" }, 5.5, 5.5),
  sized({ id: "length-1", kind: "length", keep: "cut", fabric: "linen" }, 42, 27),
  sized({ id: "rectangle-2", count: 2, use: "keep-back" }, 10.5, 10.5),
  sized({ id: "rectangle-3", use: "give-away" }, 10.5, 10.5),
  { ...facts(), id: "crumbs-1", kind: "crumbs", area: areaOf(150 * unitsPerInch ** 2) },
];

function facts() {
  return {
    count: 1,
    fabric: "print",
    keep: "trim",
    use: "yes",
    direction: "none",
    grain: "unknown",
    washed: null,
    cloth: "",
    name: "",
  } as const;
}

function sized(own: Partial<SizedPiece> & { id: string }, width: number, height: number): SizedPiece {
  return { ...facts(), kind: "rectangle", ...own, width: cut(units(width)), height: cut(units(height)) };
}
