import type { Job } from "../../cloth/index.ts";
import { finished, inches, length } from "../../length/index.ts";
import { join } from "../settle.ts";
import type { ClothNode, LayoutNode } from "../types.ts";

/**
 * A layout while it is being tidied: immutable, sizes in exact lengths. Parts of one direction are always one fork and
 * like cloth beside like cloth one leaf, so that a seam is there only where it will be sewn.
 */
export type Bough = Leaf | Fork;

type Place = {
  readonly width: number;
  readonly height: number;
  /** Which pieced region of the composition it belongs to; `composed` for what the style itself has put there, `held` for what stays. */
  readonly spot: number;
};

/** A leaf of the layout, or what is kept as it was sewn: a set with a pattern, a piece with its coping strips. */
export type Leaf = Place & { readonly kind: "leaf"; readonly node: LayoutNode };
export type Fork = Place & {
  readonly kind: "fork";
  readonly beside: boolean;
  readonly parts: readonly Bough[];
  /** Something in it stays where it is. */
  readonly holds: boolean;
};

export const composed = -1;
export const held = -2;

/** Does it lie outside the pieced regions, or reach beyond one? */
export function isFixed({ spot }: Bough): boolean {
  return spot < 0;
}

export function holds(bough: Bough): boolean {
  return bough.kind === "fork" ? bough.holds : bough.spot === held;
}

/** Which part of which part. */
export type Way = readonly number[];

export type Rect = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Joins boughs: takes in parts of its own direction, makes like cloth one. */
export type Joiner = (beside: boolean, parts: readonly Bough[]) => Bough;

/** The widest cell that one width of cloth gives. */
export function roomOf({ clothWidth, plainSeam }: Pick<Job, "clothWidth" | "plainSeam">): number {
  return clothWidth - 2 * plainSeam;
}

export function joinerFor(job: Pick<Job, "clothWidth" | "plainSeam">): Joiner {
  const room = roomOf(job);
  return (beside, parts) => {
    const flat: Bough[] = [];
    for (const part of parts) {
      for (const one of part.kind === "fork" && part.beside === beside ? part.parts : [part]) {
        const last = flat.at(-1);
        const both = last === undefined ? null : asOne(last, one, beside, room);
        if (both === null) flat.push(one);
        else flat[flat.length - 1] = both;
      }
    }
    const [first] = flat;
    return flat.length === 1 && first !== undefined ? first : fork(beside, flat);
  };
}

function fork(beside: boolean, parts: readonly Bough[]): Fork {
  const [first] = parts;
  if (first === undefined) throw new Error("a join has parts");
  const along = parts.reduce((sum, part) => sum + (beside ? part.width : part.height), 0);
  const spot = parts.every((part) => part.spot === first.spot) ? first.spot : composed;
  const made = { kind: "fork", beside, parts, spot, holds: parts.some(holds) } as const;
  return beside
    ? { ...made, width: along, height: first.height }
    : { ...made, width: first.width, height: along };
}

// Plain parts that the composition has set apart stay so: they are cut from different cloth.
function asOne(one: Bough, other: Bough, beside: boolean, room: number): Leaf | null {
  const [a, b] = [clothIn(one), clothIn(other)];
  if (a === null || b === null || a.fabric !== b.fabric || a.role === "coping" || b.role === "coping")
    return null;
  if ((isFixed(one) && isFixed(other)) || holds(one) || holds(other)) return null;
  const width = beside ? one.width + other.width : one.width;
  const height = beside ? one.height : one.height + other.height;
  if (Math.min(width, height) > room) return null;
  const spot = one.spot === other.spot ? one.spot : composed;
  const grown = clothLeaf(a.fabric, { width, height, spot });
  const role = [a, b, clothIn(grown)].some((part) => part?.role === "plain") ? "plain" : "spacer";
  return { ...grown, node: { ...a, role, width: finished(length(width)), height: finished(length(height)) } };
}

export function clothIn(bough: Bough): ClothNode | null {
  return bough.kind === "leaf" && bough.node.kind === "cloth" ? bough.node : null;
}

/** Cloth that closes a gap between pieces. */
export function clothLeaf(fabric: string, { width, height, spot }: Place): Leaf {
  const role = Math.min(width, height) > 8 * inches(1) ? "plain" : "spacer";
  const size = { width: finished(length(width)), height: finished(length(height)) };
  return {
    kind: "leaf",
    spot,
    width,
    height,
    node: { kind: "cloth", role, fabric, source: "buy", ...size },
  };
}

/** `spots`: the composition's pieced regions where they lie; `stays`: what nothing may move. */
export function boughFrom(
  layout: LayoutNode,
  { spots, stays }: { readonly spots: readonly Rect[]; readonly stays: readonly Rect[] },
  job: Job,
): Bough {
  const spotOf = (own: Rect) => {
    const stay = stays.some((rect) => isWithin(own, rect));
    return stay ? held : spots.findIndex((rect) => isWithin(own, rect));
  };
  return grown(layout, { x: 0, y: 0 }, { job, joiner: joinerFor(job), spotOf });
}

/** All of it belongs to one region. */
export function boughOf(node: LayoutNode, spot: number, job: Job): Bough {
  return grown(node, { x: 0, y: 0 }, { job, joiner: joinerFor(job), spotOf: () => spot });
}

type Growing = { readonly job: Job; readonly joiner: Joiner; readonly spotOf: (own: Rect) => number };

function grown(
  node: LayoutNode,
  { x, y }: { readonly x: number; readonly y: number },
  growing: Growing,
): Bough {
  const { width, height } = node;
  if (node.kind !== "join" || node.pattern !== undefined || isCoped(node))
    return { kind: "leaf", node, spot: growing.spotOf({ x, y, width, height }), width, height };
  const beside = node.direction === "beside";
  let along = 0;
  const parts = bundled(node.parts, beside, growing.job).map((part) => {
    const at = beside ? { x: x + along, y } : { x, y: y + along };
    along += beside ? part.width : part.height;
    return grown(part, at, growing);
  });
  return growing.joiner(beside, parts);
}

function isWithin(one: Rect, other: Rect): boolean {
  return (
    one.x >= other.x &&
    one.y >= other.y &&
    one.x + one.width <= other.x + other.width &&
    one.y + one.height <= other.y + other.height
  );
}

function isCoped(node: LayoutNode): boolean {
  return node.kind === "join" && node.parts.length === 2 && isCoping(node.parts[1]);
}

function isCoping(node: LayoutNode | undefined): boolean {
  return node?.kind === "cloth" && node.role === "coping";
}

/** A coping strip stays with what it brings to size. */
function bundled(parts: readonly LayoutNode[], beside: boolean, job: Job): LayoutNode[] {
  const bundles: LayoutNode[] = [];
  for (const part of parts) {
    const last = bundles.at(-1);
    if (last === undefined || !isCoping(part) || last.kind === "cloth") bundles.push(part);
    else bundles[bundles.length - 1] = join(beside ? "beside" : "below", [last, part], job);
  }
  return bundles;
}

export function layoutFrom(bough: Bough, job: Job): LayoutNode {
  if (bough.kind === "leaf") return bough.node;
  const parts = bough.parts.map((part) => layoutFrom(part, job));
  return join(bough.beside ? "beside" : "below", parts, job);
}

export function partAt(root: Bough, way: Way): Bough | undefined {
  return way.reduce<Bough | undefined>(
    (at, index) => (at?.kind === "fork" ? at.parts[index] : undefined),
    root,
  );
}

/** The tree with another part at `way`. */
export function replacedAt(root: Bough, way: Way, by: Bough, joiner: Joiner): Bough {
  const [index, ...rest] = way;
  if (index === undefined || root.kind === "leaf") return by;
  const part = root.parts[index];
  if (part === undefined) return root;
  return joiner(root.beside, root.parts.with(index, replacedAt(part, rest, by, joiner)));
}
