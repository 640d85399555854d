import type { JoinNode, LayoutNode, LeafNode, LeftLong, Seams, SlabNode, UnitNode } from "../layout/index.ts";
import { cutSizeOf, leftLongOf, seamsOfPart } from "../layout/index.ts";
import type { Cut, Size } from "../length/index.ts";
import { leftLongOfJoin } from "./leftLong.ts";
import { isPlainSection, runNode, runsOf, sectionAtMost } from "./runs.ts";

/** The layout as it is sewn: long joins are cut into runs, and every node knows the seams round it. */
export type Sewn = SewnJoin | SewnLeaf;

export type SewnJoin = {
  readonly node: JoinNode;
  readonly seams: Seams;
  readonly cut: Size<Cut>;
  readonly leftLong: LeftLong;
  readonly parts: readonly Sewn[];
  /** The join of the layout that this one is a run of, or a part of. */
  readonly within: JoinNode | null;
  readonly isRun: boolean;
};

export type SewnLeaf = {
  readonly node: LeafNode;
  readonly seams: Seams;
  readonly cut: Size<Cut>;
  /** How much longer than that it is laid, to be trimmed when it is joined to others. */
  readonly leftLong: LeftLong;
};

/** Whatever takes a step of its own: a join, or a unit or slab that is made before it is laid. */
export type Made = SewnJoin | (SewnLeaf & { readonly node: UnitNode | SlabNode });

export function sewnFrom(layout: LayoutNode, outer: Seams): Sewn {
  // Whatever is still left long when the back is whole is trimmed with it.
  return { ...sewn(layout, outer, null), leftLong: {} };
}

export function isJoin(part: Sewn): part is SewnJoin {
  return part.node.kind === "join";
}

export function isMade(part: Sewn): part is Made {
  return part.node.kind === "join" || part.node.kind === "unit" || part.node.kind === "slab";
}

/**
 * What takes a step, in the order a practised quilter sews: units and slabs in one go; then section by section,
 * each smallest first; then the sections to one another; last whatever touches the big plain parts, which are cut
 * to the piecing once that has been measured. Everything stands behind what it is made of.
 */
export function inSewingOrder(root: Sewn): readonly Made[] {
  const joins = joinsWithin(root).filter((join) => !fitsSection(join));
  return [
    ...leavesWithin(root).filter(isMade),
    ...sectionsWithin(root).flatMap(smallestFirst),
    ...joins.filter((join) => !hasPlainSection(join)),
    ...joins.filter(hasPlainSection),
  ];
}

/** The sections in reading order: the largest parts that are each one piece of work. */
export function sectionsWithin(part: Sewn): readonly SewnJoin[] {
  if (!isJoin(part)) return [];
  return fitsSection(part) ? [part] : part.parts.flatMap(sectionsWithin);
}

/** Every join of a section, the smallest first, so that a join always follows its parts. */
export function smallestFirst(section: SewnJoin): readonly SewnJoin[] {
  return joinsWithin(section).toSorted((a, b) => areaOf(a) - areaOf(b));
}

/** Every join with what it is made of before it, parts left to right and top to bottom. */
export function joinsWithin(part: Sewn): readonly SewnJoin[] {
  return isJoin(part) ? [...part.parts.flatMap(joinsWithin), part] : [];
}

function leavesWithin(part: Sewn): readonly Sewn[] {
  return isJoin(part) ? part.parts.flatMap(leavesWithin) : [part];
}

function sewn(node: LayoutNode, seams: Seams, within: JoinNode | null, isRun = false): Sewn {
  const cut = cutSizeOf(node, seams);
  if (node.kind !== "join") return { node, seams, cut, leftLong: leftLongOf(node) };
  const runs = isRun ? node.parts.map((part) => [part]) : runsOf(node);
  const parts = runs.map((run) => (run.length === 1 ? run[0] : runNode(node, run)));
  const laid = { ...node, parts: parts.filter((part) => part !== undefined) };
  const inner = laid.parts.map((part, index) =>
    sewn(part, seamsOfPart(laid, index, seams), isRun ? within : node, !node.parts.includes(part)),
  );
  return {
    node: laid,
    seams,
    cut,
    leftLong: leftLongOfJoin(laid.direction, inner.flatMap(partsOfRun), isRun),
    within,
    isRun,
    parts: inner,
  };
}

function partsOfRun(part: Sewn): readonly Sewn[] {
  return isJoin(part) && part.isRun ? part.parts : [part];
}

function fitsSection(join: SewnJoin): boolean {
  return Math.max(join.node.width, join.node.height) <= sectionAtMost;
}

function hasPlainSection(part: Sewn): boolean {
  return isJoin(part) ? part.parts.some(hasPlainSection) : isPlainSection(part.node);
}

function areaOf(join: SewnJoin): number {
  return join.node.width * join.node.height;
}
