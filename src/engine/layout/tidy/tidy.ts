import { colourDifference, isUndyed, type Job, type SizedPiece } from "../../cloth/index.ts";
import { assert } from "../../length/index.ts";
import { joinsFor, slabJoins } from "../../work/index.ts";
import { smallestCell } from "../stock.ts";
import type { LayoutNode, LeafNode } from "../types.ts";
import { mapLeaves } from "../walk.ts";
import { type Bough, boughFrom, joinerFor, layoutFrom, type Rect, roomOf } from "./bough.ts";
import { type Eye, type Fault, inch } from "./fault.ts";
import { faultsIn } from "./faults.ts";
import { type Mending, plainer, rearranged } from "./moves.ts";
import { after, type Box, type Cell, type Scene, Viewer } from "./scene.ts";
import { smallestTaken } from "./smallestTaken.ts";

export type Tidying = {
  readonly job: Job;
  /** The composition's pieced regions where they lie, and the cloth that closes their gaps. */
  readonly spots: readonly (Rect & { readonly cloth: string })[];
  /** What stays as and where it is. */
  readonly stays: readonly Rect[];
  /** How many layouts may be looked at. */
  readonly tries: number;
};

/**
 * The last look over a layout, as a quilter takes it before she cuts: what she would say no to is laid otherwise and,
 * where nothing else helps, made plain. The layout stays whole and takes no more time than she has.
 */
export function tidied(layout: LayoutNode, tidying: Tidying): LayoutNode {
  const table = new Table(layout, tidying);
  table.mend(rearranged);
  // With the back's size alone there is no top that something could spoil: the rules are costs, no refusals.
  if (tidying.job.top !== null) {
    table.mend(plainer);
    table.mend(rearranged);
    table.mend(plainer);
  }
  table.partLikes();
  const tidy = withCopiesNamed(layoutFrom(table.root, tidying.job));
  // What stays keeps its own piece, even where a smaller one would serve.
  return tidying.stays.length > 0 ? tidy : smallestTaken(tidy, tidying.job);
}

type Ways = (fault: Fault, mending: Mending) => Generator<Bough>;

/** As much as that many square inches of her leftovers. */
const faultCost = 250;

type Looked = {
  readonly scene: Scene;
  readonly faults: readonly Fault[];
  /** What it costs without its faults. */
  readonly base: number;
  readonly cost: number;
};

type Trying = {
  readonly ways: Ways;
  /** Null: it is no better than what is best so far. */
  readonly look: (root: Bough) => Looked | null;
  readonly isEnough: (before: Looked) => boolean;
};

class Table {
  private looked: Looked;
  private left: number;
  private readonly eye: Eye;
  private readonly viewer: Viewer;
  private readonly mostJoins: number;
  private readonly mending: Omit<Mending, "root">;

  constructor(layout: LayoutNode, { job, spots, stays, tries }: Tidying) {
    this.eye = eyeOf(layout, job);
    this.viewer = new Viewer((node) => isHalf(node, this.eye));
    this.left = tries;
    const root = boughFrom(layout, { spots, stays }, job);
    this.mending = {
      cloths: spots.map(({ cloth }) => cloth),
      isHalf: (leaf) => isHalf(leaf.node, this.eye),
      limits: {
        pieces: this.eye.pieces,
        seam: job.seam,
        step: job.step,
        smallest: Math.ceil(Math.max(smallestCell(job), 2 * inch) / job.step) * job.step,
        plain: job.plain,
        room: roomOf(job),
        joiner: joinerFor(job),
      },
    };
    this.mostJoins = Math.max(joinsFor(job), joinsIn(root));
    const looked = this.look(root, Number.POSITIVE_INFINITY);
    assert(looked !== null, "a layout can be looked at");
    this.looked = looked;
  }

  get root(): Bough {
    return this.looked.scene.root;
  }

  /** Goes through what is wrong, again and again until nothing can be mended this way. */
  mend(ways: Ways): void {
    this.rounds(() => this.looked.faults, {
      ways,
      look: (root) => this.look(root, this.looked.cost - 1e-6),
      isEnough: (before) => this.looked.cost <= before.cost - faultCost,
    });
  }

  /** Like fabrics come apart wherever nothing else becomes worse by it. */
  partLikes(): void {
    this.rounds(() => likesIn(this.looked.scene, this.eye), {
      ways: rearranged,
      look: (root) => this.lookAtLikes(root),
      isEnough: (before) => this.looked !== before,
    });
  }

  private rounds(faults: () => readonly Fault[], trying: Trying): void {
    for (let mended = true; mended && this.left > 0; ) {
      mended = false;
      let all = faults();
      for (let at = 0; at < all.length && this.left > 0; ) {
        const fault = all[at];
        if (fault === undefined || !this.better(fault, trying)) at++;
        else [all, mended] = [faults(), true];
      }
    }
  }

  /** The first that is enough, else the best of them. */
  private better(fault: Fault, { ways, look, isEnough }: Trying): boolean {
    const now = this.looked;
    for (const other of ways(fault, { ...this.mending, root: this.root })) {
      if (this.left <= 0) break;
      if (joinsIn(other) > this.mostJoins) continue;
      const better = look(other);
      if (better !== null) this.looked = better;
      if (isEnough(now)) break;
    }
    return this.looked !== now;
  }

  /** Null: it costs as much as that or more. */
  private look(root: Bough, bound: number): Looked | null {
    this.left--;
    const scene = this.viewer.sceneOf(root);
    const base = likeLength(scene, this.eye) / inch - usedIn(scene, this.eye);
    const faults = faultsIn(scene, this.eye, Math.ceil((bound - base) / faultCost) - 1);
    return faults === null ? null : { scene, faults, base, cost: base + faults.length * faultCost };
  }

  /** Most exchanges part no likes; that is quickly seen. */
  private lookAtLikes(root: Bough): Looked | null {
    this.left -= 0.25;
    const scene = this.viewer.sceneOf(root);
    const base = likeLength(scene, this.eye) / inch - usedIn(scene, this.eye);
    if (base >= this.looked.base - 1e-6) return null;
    return this.look(root, this.looked.cost - 1e-6);
  }
}

function eyeOf(layout: LayoutNode, job: Job): Eye {
  const sized = job.pieces.filter((piece): piece is SizedPiece => piece.kind !== "crumbs");
  return {
    job,
    pieces: new Map(sized.map((piece) => [piece.id, piece])),
    outline: outlineOf(layout, job),
    areLike: likenessOf(job),
  };
}

function outlineOf({ width, height }: LayoutNode, { top }: Job): Box | null {
  if (top === null) return null;
  const [x, y] = [(width - top.width) / 2, (height - top.height) / 2];
  return { x, y, right: x + top.width, bottom: y + top.height };
}

/** Below 5 (CIEDE2000) nobody tells two fabrics apart across a table. */
function likenessOf({ fabrics }: Job): Eye["areLike"] {
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const found = new Map<string, Map<string, boolean>>();
  return (one, other) => {
    if (one === other) return true;
    const row = found.get(one) ?? new Map<string, boolean>();
    const before = row.get(other);
    if (before !== undefined) return before;
    found.set(one, row);
    const [a, b] = [known.get(one), known.get(other)];
    const [first, second] = [a?.colours[0], b?.colours[0]];
    const dyed = a !== undefined && b !== undefined && !isUndyed(a) && !isUndyed(b);
    const like = dyed && !!first && !!second && colourDifference(first.lab, second.lab) < 5;
    row.set(other, like);
    return like;
  };
}

function isHalf(node: LayoutNode, { pieces }: Eye): boolean {
  return node.kind === "piece" && pieces.get(node.piece)?.kind === "half-square-triangle";
}

/** Seams to sew, as her time is counted: a slab's by its area. */
function joinsIn(bough: Bough): number {
  if (bough.kind === "leaf") return joinsOfNode(bough.node);
  return bough.parts.reduce((sum, part) => sum + joinsIn(part), bough.parts.length - 1);
}

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

/** How far like touches like, in all. */
function likeLength(scene: Scene, eye: Eye): number {
  let long = 0;
  eachLike(scene, eye, (cell, other, wide) => {
    long += wide
      ? Math.min(cell.bottom, other.bottom) - Math.max(cell.y, other.y)
      : Math.min(cell.right, other.right) - Math.max(cell.x, other.x);
  });
  return long;
}

function likesIn(scene: Scene, eye: Eye): Fault[] {
  const faults: Fault[] = [];
  eachLike(scene, eye, (cell, other) => {
    faults.push({ kind: "like", ways: [cell.way, other.way], by: [], wide: null });
  });
  return faults;
}

type Touch = (cell: Cell, other: Cell, wide: boolean) => void;

function eachLike({ cells, sides }: Scene, eye: Eye, touch: Touch): void {
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

/** Of her leftovers, in square inches; what she wants in counts more, and what is sewn into units. */
function usedIn({ cells }: Scene, eye: Eye): number {
  let sum = 0;
  for (const { node, cloth, inSet } of cells) {
    if (cloth !== null) continue;
    const area = (node.width / inch) * (node.height / inch);
    sum += area * worthOf(node, eye) + (inSet ? area + 40 : node.kind === "piece" ? 0 : area + 150);
    if (node.kind === "piece" && eye.pieces.get(node.piece)?.use === "must") sum += 1000;
  }
  return sum;
}

function worthOf(node: LeafNode, { pieces }: Eye): number {
  return node.kind === "piece" && pieces.get(node.piece)?.use === "first" ? 3 : 1;
}

/** Which of several equal strips a cell comes from is said only where it gives more than one. */
function withCopiesNamed(layout: LayoutNode): LayoutNode {
  const counts = new Map<string, number>();
  const keyOf = (node: LeafNode) =>
    node.kind === "piece" && node.copy !== undefined ? `${node.piece} ${node.copy}` : null;
  mapLeaves(layout, (leaf) => {
    const key = keyOf(leaf);
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
    return leaf;
  });
  return mapLeaves(layout, (leaf) => {
    const key = keyOf(leaf);
    if (leaf.kind !== "piece" || key === null || counts.get(key) !== 1) return leaf;
    const { copy: _, ...alone } = leaf;
    return alone;
  });
}
