import type { Job, Piece } from "../cloth/index.ts";
import { nodeOf } from "./giveAndTake.ts";
import { fits, isAtEdge } from "./here.ts";
import { type NoShift, rowsShifted, type Shift } from "./moveByHand.ts";
import { roleFor } from "./role.ts";
import { join } from "./settle.ts";
import { type Face, stockOf } from "./stock.ts";
import type { ClothNode, JoinNode, LayoutNode, LeafNode, PieceNode, Quarter } from "./types.ts";
import { leavesOf, mapLeaves, type Path, type PlacedLeaf, placedAt, withoutGivers } from "./walk.ts";

/** What she changes in a plan by hand, each in one cell or two. */
export type Edit =
  | { readonly kind: "swap"; readonly at: Path; readonly with: Path }
  | { readonly kind: "turn"; readonly at: Path }
  | { readonly kind: "make-plain"; readonly at: Path }
  /** A leftover that lies unused, as it would lie there. */
  | { readonly kind: "put"; readonly at: Path; readonly piece: PieceNode }
  /** Other cloth for a plain part. */
  | { readonly kind: "cloth"; readonly at: Path; readonly fabric: string }
  | Shift;

/** Why an edit has no way at all, whatever would fit. */
export type NoWay =
  /** Nothing would look otherwise. */
  | { readonly kind: "same" }
  /** A unit lies as it is sewn. */
  | { readonly kind: "sewn" }
  /** What is sewn already changes places only with a cell of its very size. */
  | { readonly kind: "another-size" }
  /** Bias or unknown grain would lie at the edge of the back. */
  | { readonly kind: "would-stretch"; readonly piece: string }
  | NoShift;

/**
 * The layouts that an edit may come to, what she means most likely first: joins, seams and numbers of strips are right
 * again, whether pieces fit is not looked at, and plain cloth that is new has no source yet. All other cells are as
 * they were.
 */
export function waysTo(edit: Edit, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  const bare = withoutGivers(layout);
  const found = waysOf(edit, bare, job);
  return "kind" in found ? found : found.map((way) => numbered(rejoined(way, job)));
}

function waysOf(edit: Edit, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  switch (edit.kind) {
    case "swap":
      return swaps(edit, layout, job);
    case "turn":
      return turns(edit.at, layout, job);
    case "make-plain":
      return plains(edit.at, layout, job);
    case "put":
      return [replaced(layout, edit.at, edit.piece)];
    case "cloth":
      return otherCloth(edit, layout, job);
    case "move":
    case "resize":
      return shifts(edit, layout, job);
  }
}

// ---- Changing places

function swaps(edit: Edit & { kind: "swap" }, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  const [one, other] = [leafAt(layout, edit.at, job), leafAt(layout, edit.with, job)];
  if (one === null || other === null || one === other) return { kind: "same" };
  const stretching = [wouldStretch(one, other, { layout, job }), wouldStretch(other, one, { layout, job })];
  const piece = stretching.find((id) => id !== null);
  if (piece != null) return { kind: "would-stretch", piece };
  const [here, there] = [waysToLie(other.node, one.node, job), waysToLie(one.node, other.node, job)];
  const ways = here.flatMap((a) => there.map((b) => replaced(replaced(layout, edit.at, a), edit.with, b)));
  const inRow = inOneRow(edit) ? [withPartsSwapped(layout, edit)] : [];
  const all = [...ways, ...inRow];
  return all.length === 0 ? { kind: "another-size" } : all;
}

function leafAt(layout: LayoutNode, path: Path, job: Job): PlacedLeaf | null {
  const placed = placedAt(layout, path, job);
  return placed === undefined || placed.node.kind === "join" ? null : { ...placed, node: placed.node };
}

type Table = { readonly layout: LayoutNode; readonly job: Job };

function wouldStretch({ node }: PlacedLeaf, to: PlacedLeaf, { layout, job }: Table): string | null {
  if (node.kind !== "piece" || !isAtEdge(to, layout)) return null;
  return pieceOf(node, job)?.grain === "straight" ? null : node.piece;
}

function pieceOf({ piece: id }: PieceNode, { pieces }: Job): Piece | undefined {
  return pieces.find((piece) => piece.id === id);
}

/** A leaf as it may lie in a place of that size; as it lies now first. */
function waysToLie(leaf: LeafNode, { width, height }: LayoutNode, job: Job): readonly LeafNode[] {
  if (leaf.width === width && leaf.height === height) return [leaf];
  if (leaf.kind === "cloth") return [{ ...leaf, role: roleFor({ width, height }), width, height }];
  if (leaf.kind !== "piece" || leaf.quarter !== undefined) return [];
  const upright = { ...leaf, width, height };
  return pieceOf(leaf, job)?.direction === "one-way"
    ? [upright]
    : [upright, { ...upright, turned: !leaf.turned }];
}

/** Parts of one row may change places whatever their sizes: what lies between them moves along. */
function inOneRow({ at, with: other }: Edit & { kind: "swap" }): boolean {
  return at.length === other.length && at.slice(0, -1).every((index, depth) => other[depth] === index);
}

function withPartsSwapped(layout: LayoutNode, { at, with: other }: Edit & { kind: "swap" }): LayoutNode {
  const [one, two] = [nodeOf(layout, at), nodeOf(layout, other)];
  return replaced(replaced(layout, at, two), other, one);
}

/**
 * The cells with which a cell may change places: of its very size, or each piece fits where the other lies, or in one
 * row. What would look the same is none, nor are two plain parts.
 */
export function partnersOf(cell: PlacedLeaf, layout: LayoutNode, job: Job): readonly PlacedLeaf[] {
  const cells = leavesOf(layout, job);
  const mayLie = fitting(cells, job);
  return cells
    .filter((other) => {
      if (isAlike(cell.node, other.node)) return false;
      if (inOneRow({ kind: "swap", at: cell.path, with: other.path })) return true;
      return mayLie(cell, other) && mayLie(other, cell);
    })
    .filter((other) =>
      [wouldStretch(cell, other, { layout, job }), wouldStretch(other, cell, { layout, job })].every(
        (id) => id === null,
      ),
    );
}

function isAlike(one: LeafNode, other: LeafNode): boolean {
  if (one === other || (one.kind === "cloth" && other.kind === "cloth")) return true;
  if (one.kind !== "piece" || other.kind !== "piece") return false;
  return one.piece === other.piece && one.quarter === other.quarter;
}

/** Whether a leaf has the cloth to lie in another's place, and what else is cut off its strip leaves enough for it. */
function fitting(cells: readonly PlacedLeaf[], job: Job): (leaf: PlacedLeaf, place: PlacedLeaf) => boolean {
  const faces = facesByPiece(job);
  const taken = takenOffStrips(cells, job);
  return (leaf, place) => {
    const { node } = leaf;
    const { width, height } = place.node;
    if ((node.width === width && node.height === height) || node.kind === "cloth") return true;
    if (node.kind !== "piece" || node.quarter !== undefined) return false;
    const beside = (taken.get(stripOf(node) ?? "") ?? 0) - lengthOff(leaf, job);
    return (faces.get(node.piece) ?? []).some((face) => {
      const along = face.along === "width" ? place.cutWidth : place.cutHeight;
      const isLeft = node.copy === undefined || beside + along <= longSideOf(node, job);
      return isLeft && fits(face, width / job.step, height / job.step);
    });
  };
}

function facesByPiece(job: Job): ReadonlyMap<string, readonly Face[]> {
  const faces = new Map<string, Face[]>();
  for (const face of stockOf(job).faces) {
    const { id } = face.lot.piece;
    const known = faces.get(id);
    if (known === undefined) faces.set(id, [face]);
    else known.push(face);
  }
  return faces;
}

/** The cut length of all cells off one strip. */
function takenOffStrips(cells: readonly PlacedLeaf[], job: Job): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  for (const cell of cells) {
    const strip = stripOf(cell.node);
    if (strip !== null) taken.set(strip, (taken.get(strip) ?? 0) + lengthOff(cell, job));
  }
  return taken;
}

function lengthOff({ node, cutWidth, cutHeight }: PlacedLeaf, job: Job): number {
  const piece = node.kind === "piece" ? pieceOf(node, job) : undefined;
  if (node.kind !== "piece" || piece === undefined || piece.kind === "crumbs") return 0;
  return piece.height >= piece.width !== node.turned ? cutHeight : cutWidth;
}

function longSideOf(node: PieceNode, job: Job): number {
  const piece = pieceOf(node, job);
  return piece === undefined || piece.kind === "crumbs" ? 0 : Math.max(piece.width, piece.height);
}

// ---- Another place or size in its row

function shifts(edit: Shift, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  const rows = rowsShifted(edit, layout, job);
  if (rows === null) return { kind: "same" };
  return "kind" in rows ? rows : rows.map((row) => replaced(layout, edit.at.slice(0, -1), row));
}

// ---- Turning

function turns(at: Path, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  const node = nodeOf(layout, at);
  if (node.kind === "cloth" || node.kind === "join") return { kind: "same" };
  if (node.kind !== "piece") return { kind: "sewn" };
  if (node.quarter !== undefined) return [replaced(layout, at, { ...node, quarter: nextOf(node.quarter) })];
  if (pieceOf(node, job)?.direction === "none" && node.width === node.height) return { kind: "same" };
  return [replaced(layout, at, { ...node, turned: !node.turned })];
}

function nextOf(quarter: Quarter): Quarter {
  const next: { readonly [Q in Quarter]: Quarter } = { 0: 1, 1: 2, 2: 3, 3: 0 };
  return next[quarter];
}

// ---- Plain cloth

/** Plain, of the cloth that lies nearest: in its own row, or in that round it. */
function plains(at: Path, layout: LayoutNode, job: Job): readonly LayoutNode[] | NoWay {
  if (nodeOf(layout, at).kind === "cloth") return { kind: "same" };
  const place = onStep(layout, at, job);
  const { width, height } = nodeOf(layout, place);
  return clothNear(place, layout, job).map((fabric) => {
    const cloth: ClothNode = {
      kind: "cloth",
      role: roleFor({ width, height }),
      fabric,
      source: "buy",
      width,
      height,
    };
    return replaced(layout, place, cloth);
  });
}

/** A piece off the ruler's step goes with the strips that bring it there. */
function onStep(layout: LayoutNode, path: Path, job: Job): Path {
  const { width, height } = nodeOf(layout, path);
  if (path.length === 0 || (width % job.step === 0 && height % job.step === 0)) return path;
  const around = path.slice(0, -1);
  const own = path.at(-1);
  const row = nodeOf(layout, around);
  const isCoped =
    row.kind === "join" &&
    row.parts.every((part, index) => index === own || (part.kind === "cloth" && part.role === "coping"));
  return isCoped ? onStep(layout, around, job) : path;
}

function clothNear(path: Path, layout: LayoutNode, job: Job): readonly string[] {
  const near = leavesOf(layout, job)
    .flatMap(({ node, path: at }) => (node.kind === "cloth" ? [{ node, shared: sharedOf(path, at) }] : []))
    .sort((a, b) => b.shared - a.shared || b.node.width * b.node.height - a.node.width * a.node.height);
  return [...new Set([...near.map(({ node }) => node.fabric), job.plain])];
}

function sharedOf(one: Path, other: Path): number {
  const at = one.findIndex((index, depth) => other[depth] !== index);
  return at < 0 ? one.length : at;
}

function otherCloth(
  { at, fabric }: Edit & { kind: "cloth" },
  layout: LayoutNode,
  job: Job,
): readonly LayoutNode[] | NoWay {
  const node = nodeOf(layout, at);
  if (node.kind !== "cloth" || node.fabric === fabric || !clothsOf(job).includes(fabric))
    return { kind: "same" };
  return [replaced(layout, at, { ...node, fabric, source: "buy" })];
}

/** The fabrics that a plain part may be of: what she would buy, and her lengths. */
export function clothsOf({ plain, pieces }: Job): readonly string[] {
  const lengths = pieces.filter(
    ({ kind, use }) => kind === "length" && use !== "keep-back" && use !== "give-away",
  );
  return [...new Set([plain, ...lengths.map(({ fabric }) => fabric)])];
}

// ---- The tree

function replaced(node: LayoutNode, [at, ...rest]: Path, by: LayoutNode): LayoutNode {
  if (at === undefined) return by;
  if (node.kind !== "join") return node;
  return {
    ...node,
    parts: node.parts.map((part, index) => (index === at ? replaced(part, rest, by) : part)),
  };
}

/** Seams follow what they join: with all parts plain they are wider, and no join lies in a like one. */
function rejoined(node: LayoutNode, job: Job): LayoutNode {
  if (node.kind !== "join") return node;
  const parts = node.parts.map((part) => rejoined(part, job));
  return named(join(node.direction, parts, job), node);
}

function named(made: LayoutNode, { pattern }: JoinNode): LayoutNode {
  return made.kind !== "join" || pattern === undefined ? made : { ...made, pattern };
}

/** A strip that gives one cell alone needs no number. */
function numbered(layout: LayoutNode): LayoutNode {
  const cells = new Map<string, number>();
  mapLeaves(layout, (leaf) => {
    const strip = stripOf(leaf);
    if (strip !== null) cells.set(strip, (cells.get(strip) ?? 0) + 1);
    return leaf;
  });
  return mapLeaves(layout, (leaf) => {
    const strip = stripOf(leaf);
    if (leaf.kind !== "piece" || strip === null || (cells.get(strip) ?? 0) > 1) return leaf;
    const { copy, ...whole } = leaf;
    return whole;
  });
}

function stripOf(leaf: LeafNode): string | null {
  return leaf.kind === "piece" && leaf.copy !== undefined ? `${leaf.copy} of ${leaf.piece}` : null;
}
