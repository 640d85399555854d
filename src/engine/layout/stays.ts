import { type PiecedRegion, type Style, siteOf } from "../back/index.ts";
import type { Job, Piece } from "../cloth/index.ts";
import { type Finished, finished, length } from "../length/index.ts";
import type { Ground } from "./ground.ts";
import type { JoinNode, LayoutNode, LeafNode } from "./types.ts";
import { mapLeaves, type Path } from "./walk.ts";

/** Cells of an earlier plan that stay as they are in the next: the same piece, in the same place, lying the same way. */
export type Stays = { readonly layout: LayoutNode; readonly paths: readonly Path[] };

/**
 * The earlier layout as ground for the next one. The joins above what stays keep their cuts; the plain cloth of the
 * composition stays in its place too, though it may be cut from other cloth; all between is to be filled again.
 * A sewn set, or a piece with the strips that bring it to the step, stays as a whole.
 */
export function groundFrom({ layout, paths }: Stays, job: Job, style: Style): Ground {
  const view: View = {
    paths: new Set(paths.map(keyOf)),
    above: new Set(paths.flatMap((path) => path.map((_, at) => keyOf(path.slice(0, at))))),
    job,
    style,
    layout,
    cloth: mainCloth(layout, job),
    hasRing: ringed(job),
  };
  return numbered(groundOf({ node: layout, path: [], x: 0, y: 0 }, view), job);
}

type View = {
  readonly paths: ReadonlySet<string>;
  /** The joins above them. */
  readonly above: ReadonlySet<string>;
  readonly job: Job;
  readonly style: Style;
  readonly layout: LayoutNode;
  readonly cloth: string;
  readonly hasRing: boolean;
};

type At = { readonly node: LayoutNode; readonly path: Path; readonly x: number; readonly y: number };

export function keyOf(path: Path): string {
  return path.join(" ");
}

function groundOf(at: At, view: View): Ground {
  const { node, path } = at;
  if (view.paths.has(keyOf(path))) return staying(node);
  if (node.kind !== "join") return isComposed(at, view) ? clothOf(node, view) : pieced(node, view.cloth);
  if (node.pattern !== undefined)
    return view.above.has(keyOf(path)) ? staying(node) : pieced(node, view.cloth);
  return joined(node, partsOf(at, node, view), view.cloth);
}

function partsOf({ path, x, y }: At, node: JoinNode, view: View): readonly Ground[] {
  const beside = node.direction === "beside";
  let along = 0;
  return groupsOnStep(node, view.job).map(({ parts, first }) => {
    const at = { x: beside ? x + along : x, y: beside ? y : y + along };
    const size = alongOf(node, parts);
    along += size;
    const [only] = parts;
    if (parts.length === 1 && only !== undefined)
      return groundOf({ node: only, path: [...path, first], ...at }, view);
    const both = { ...node, parts, [beside ? "width" : "height"]: finished(length(size)) };
    const keys = parts.map((_, index) => keyOf([...path, first + index]));
    const stays = keys.some((key) => view.paths.has(key) || view.above.has(key));
    return stays ? staying(both) : pieced(both, view.cloth);
  });
}

type Group = { readonly parts: readonly LayoutNode[]; readonly first: number };

/** A piece off the ruler's step and the strip that brings it there are one part, as few together as can be. */
function groupsOnStep(node: JoinNode, { step }: Job): readonly Group[] {
  const groups: Group[] = [];
  let first = 0;
  for (let at = 1; at <= node.parts.length; at++) {
    const parts = node.parts.slice(first, at);
    if (alongOf(node, parts) % step !== 0 && at < node.parts.length) continue;
    groups.push({ parts, first });
    first = at;
  }
  return groups;
}

function alongOf({ direction }: JoinNode, parts: readonly LayoutNode[]): number {
  return parts.reduce((sum, part) => sum + (direction === "beside" ? part.width : part.height), 0);
}

function staying(node: LayoutNode): Ground {
  return { kind: "stays", node, width: node.width, height: node.height };
}

type CellSize = { readonly width: Finished; readonly height: Finished };

function pieced({ width, height }: CellSize, fabric: string): PiecedRegion {
  return { kind: "pieced", fabric, width, height };
}

function clothOf(node: LeafNode, { cloth }: View): Ground {
  if (node.kind !== "cloth") return pieced(node, cloth);
  const { role, fabric, width, height } = node;
  return { kind: "cloth", role, fabric, width, height };
}

/** Neighbours that are to be filled again are one room. */
function joined({ direction, width, height }: JoinNode, parts: readonly Ground[], fabric: string): Ground {
  const merged: Ground[] = [];
  for (const part of parts) {
    const last = merged.at(-1);
    if (last?.kind === "pieced" && part.kind === "pieced")
      merged[merged.length - 1] = both(direction, last, part);
    else merged.push(part);
  }
  const [only] = merged;
  if (merged.length === 1 && only !== undefined) return only;
  return merged.length === 0
    ? pieced({ width, height }, fabric)
    : { kind: "join", direction, parts: merged, width, height };
}

function both(direction: JoinNode["direction"], one: PiecedRegion, other: PiecedRegion): PiecedRegion {
  return direction === "beside"
    ? { ...one, width: finished(length(one.width + other.width)) }
    : { ...one, height: finished(length(one.height + other.height)) };
}

/** Styles whose spacers are part of how they look; elsewhere a spacer closes a gap that leftovers left. */
const spaced: readonly Style[] = ["block-line", "centred"];

/** Plain cloth of the composition, as against what closes a gap in a pieced part. */
function isComposed({ node, x, y }: At, { hasRing, style, layout }: View): boolean {
  if (node.kind !== "cloth") return false;
  const outer = x === 0 || y === 0 || x + node.width === layout.width || y + node.height === layout.height;
  if (outer && hasRing) return true;
  if (style === "all-over") return false;
  return node.role === "plain" || spaced.includes(style);
}

function ringed(job: Job): boolean {
  const { ringX, ringY } = siteOf(job);
  return ringX > 0 || ringY > 0;
}

/** The plain cloth there is most of, where she still has it. */
function mainCloth(layout: LayoutNode, job: Job): string {
  const areas = new Map<string, number>();
  mapLeaves(layout, (leaf) => {
    if (leaf.kind === "cloth")
      areas.set(leaf.fabric, (areas.get(leaf.fabric) ?? 0) + leaf.width * leaf.height);
    return leaf;
  });
  const has = (fabric: string) => job.fabrics.some(({ id }) => id === fabric);
  const [most] = [...areas].filter(([fabric]) => has(fabric)).sort(([, one], [, other]) => other - one);
  return most?.[0] ?? job.plain;
}

/** What is cut up gives several cells: each strip that one of them is cut from gets a number, from 1. */
function numbered(ground: Ground, job: Job): Ground {
  const rows = new Map(job.pieces.map((piece) => [piece.id, piece]));
  const numbers = new Map<string, Map<string, number>>();
  let loose = 0;
  const number = (leaf: LeafNode): LeafNode => {
    if (leaf.kind !== "piece" || !isCutUp(rows.get(leaf.piece))) return leaf;
    const ofRow = numbers.get(leaf.piece) ?? new Map<string, number>();
    numbers.set(leaf.piece, ofRow);
    const strip = leaf.copy === undefined ? `loose ${loose++}` : `copy ${leaf.copy}`;
    const copy = ofRow.get(strip) ?? ofRow.size + 1;
    ofRow.set(strip, copy);
    return { ...leaf, copy };
  };
  const through = (part: Ground): Ground => {
    if (part.kind === "join") return { ...part, parts: part.parts.map(through) };
    return part.kind === "stays" ? staying(mapLeaves(part.node, number)) : part;
  };
  return through(ground);
}

/** Only what has no diagonal is cut across. */
export function isCutUp(piece: Piece | undefined): boolean {
  if (piece === undefined || piece.kind === "crumbs") return false;
  return piece.keep === "cut" && piece.kind !== "half-square-triangle" && piece.kind !== "triangle";
}
