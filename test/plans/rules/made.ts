import { fabricOf, type SizedPiece } from "../../../src/engine/cloth/index.ts";
import type { LayoutNode, LeafNode } from "../../../src/engine/layout/index.ts";
import { cut, finished, inches, length, type Size, unitsPerInch } from "../../../src/engine/length/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import { handMadePlan } from "../../generators/handMadePlan.ts";

// Small layouts to hold the rules against; finished sizes in inches.

export function bit(piece: string, width: number, height: number, more: Partial<PieceLeaf> = {}): PieceLeaf {
  return { kind: "piece", piece, turned: false, ...size(width, height), ...more };
}

type PieceLeaf = Extract<LeafNode, { kind: "piece" }>;
type ClothLeaf = Extract<LeafNode, { kind: "cloth" }>;

export function plain(width: number, height: number, role: ClothLeaf["role"] = "plain"): ClothLeaf {
  return { kind: "cloth", role, fabric: "plain", source: "buy", ...size(width, height) };
}

export function unit(pattern: string, piece: string, count: number, side: number): LayoutNode {
  return { kind: "unit", pattern, pieces: [{ piece, count }], cloth: [], ...size(side, side) };
}

export function beside(...parts: readonly LayoutNode[]): LayoutNode {
  const width = parts.reduce((sum, part) => sum + part.width, 0) / unitsPerInch;
  return joined("beside", parts, size(width, (parts[0]?.height ?? 0) / unitsPerInch));
}

export function below(...parts: readonly LayoutNode[]): LayoutNode {
  const height = parts.reduce((sum, part) => sum + part.height, 0) / unitsPerInch;
  return joined("below", parts, size((parts[0]?.width ?? 0) / unitsPerInch, height));
}

/** The same as a set of like pieces. */
export function set(pattern: string, node: LayoutNode): LayoutNode {
  return node.kind === "join" ? { ...node, pattern } : node;
}

function joined(direction: "beside" | "below", parts: readonly LayoutNode[], box: Box): LayoutNode {
  const seam = parts.every(({ kind }) => kind === "cloth") ? inches(1, 2) : inches(1, 4);
  return { kind: "join", direction, seam, parts, ...box };
}

type Box = Size<LayoutNode["width"]>;

type More = Partial<Plan> & {
  /** What its row says, for a piece that isn't a print cut to fit. */
  readonly rows?: Readonly<Record<string, Partial<SizedPiece>>>;
  /** Fabric by piece. */
  readonly colours?: Readonly<Record<string, string>>;
};

/** A plan of this layout, its pieces cut to fit; no top unless it is given. */
export function planOf(layout: LayoutNode, { rows = {}, colours = {}, ...more }: More = {}): Plan {
  const cells = new Map(leavesIn(layout).flatMap((leaf) => piecesIn(leaf).map((id) => [id, leaf])));
  const pieces = [...cells].map(([id, leaf]) => ({ ...pieceFor(id, leaf), ...rows[id] }));
  const unused = Object.keys(rows).filter((id) => !cells.has(id));
  return {
    ...handMadePlan(),
    layout,
    style: "chunks",
    back: { width: length(layout.width + inches(1, 2)), height: length(layout.height + inches(1, 2)) },
    top: null,
    fabrics: ["plain", ...new Set(Object.values(colours))].flatMap((colour) => {
      const made = fabricOf(colour, colour, colour === "plain" ? "#e4dccb" : colour);
      return made === null ? [] : [made];
    }),
    pieces: [
      ...pieces.map((piece) => ({ ...piece, fabric: colours[piece.id] ?? piece.fabric })),
      ...unused.map((id) => ({ ...pieceFor(id, plain(4, 4)), ...rows[id] })),
    ],
    unused: unused.map((piece) => ({ piece, count: 1 })),
    steps: [],
    ...more,
  };
}

/** A top of this size under the plan's middle. */
export function topOf(
  width: number,
  height: number,
  method: "frame" | "machine" | "hand" = "frame",
): Plan["top"] {
  return { ...size(width, height), method, extra: inches(4) };
}

export function inched(width: number, height: number): Pick<SizedPiece, "width" | "height"> {
  return { width: cut(length(width * unitsPerInch)), height: cut(length(height * unitsPerInch)) };
}

function pieceFor(id: string, { width, height }: LeafNode): SizedPiece {
  return {
    id,
    kind: "rectangle",
    count: 40,
    fabric: id,
    keep: "trim",
    use: "yes",
    direction: "none",
    grain: "straight",
    washed: null,
    cloth: "",
    name: "",
    ...inched(width / unitsPerInch + 0.5, height / unitsPerInch + 0.5),
  };
}

function piecesIn(leaf: LeafNode): string[] {
  if (leaf.kind === "piece") return [leaf.piece];
  return leaf.kind === "unit" ? leaf.pieces.map(({ piece }) => piece) : [];
}

function leavesIn(node: LayoutNode): LeafNode[] {
  return node.kind === "join" ? node.parts.flatMap(leavesIn) : [node];
}

function size(width: number, height: number): Box {
  return {
    width: finished(length(width * unitsPerInch)),
    height: finished(length(height * unitsPerInch)),
  };
}
