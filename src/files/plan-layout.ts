import {
  type ClothNode,
  type ClothSource,
  clothRoles,
  deepestJoin,
  type JoinNode,
  joinDirections,
  type LayoutNode,
  type LeftLong,
  mostCells,
  type PieceNode,
  type Quarter,
  type SlabNode,
  type UnitCloth,
  type UnitNode,
} from "../engine/layout/index.ts";
import type { Length } from "../engine/length/index.ts";
import {
  cutSize,
  finishedSize,
  flag,
  isObject,
  list,
  may,
  must,
  name,
  oneOf,
  peek,
  type Reader,
  record,
  report,
  size,
  sizeOrNothing,
  whole,
} from "./plan-json.ts";

/** The seams that a join has when its file leaves them out. */
export type DefaultSeams = { readonly seam: Length; readonly plainSeam: Length };

export const most = 100_000;
export const quarters = [0, 1, 2, 3] as const satisfies readonly Quarter[];

const nodeKinds = ["join", "piece", "unit", "slab", "cloth"] as const satisfies readonly LayoutNode["kind"][];
const cell = { width: must(finishedSize), height: must(finishedSize) };

export const taken = record<{ readonly piece: string; readonly count: number }>({
  piece: must(name),
  count: must(whole(1, most)),
});

const fromLength = record<Exclude<ClothSource, "buy">>({ piece: must(name), copy: must(whole(1, most)) });

export const source: Reader<ClothSource> = (value, place) =>
  typeof value === "string" ? oneOf(["buy"])(value, place) : fromLength(value, place);

/** How much longer something is left than its cut size, by its sides. */
export const leftLong = record<LeftLong>({ width: may(size), height: may(size) });

const pieceNode = record<PieceNode>({
  kind: must(oneOf(["piece"])),
  piece: must(name),
  turned: must(flag),
  quarter: may(oneOf(quarters)),
  copy: may(whole(1, most)),
  leftLong: may(leftLong),
  ...cell,
});

const unitCloth = record<UnitCloth>({
  fabric: must(name),
  source: must(source),
  width: must(cutSize),
  height: must(cutSize),
  count: must(whole(1, most)),
});

const unitNode = record<UnitNode>({
  kind: must(oneOf(["unit"])),
  pattern: must(name),
  rotations: may(list(oneOf(quarters), 1_000)),
  pieces: must(list(taken, 1_000)),
  cloth: must(list(unitCloth, 1_000)),
  ...cell,
});

const slabNode = record<SlabNode>({
  kind: must(oneOf(["slab"])),
  crumbs: may(name),
  pieces: may(list(taken, 1_000)),
  ...cell,
});

const clothNode = record<ClothNode>({
  kind: must(oneOf(["cloth"])),
  role: must(oneOf(clothRoles)),
  fabric: must(name),
  source: must(source),
  leftLong: may(leftLong),
  ...cell,
});

type WrittenJoin = Omit<JoinNode, "seam"> & { readonly seam?: Length };

/** Reads a node and all below it; deeper than any back is reported, not followed. */
export function layoutNode(seams: DefaultSeams): Reader<LayoutNode> {
  const node: Reader<LayoutNode> = (value, place) => {
    if (place.depth > deepestJoin) return report(place, { kind: "too-deep", most: deepestJoin });
    const kind = isObject(value) ? peek(value, "kind", oneOf(nodeKinds), place) : undefined;
    switch (kind) {
      case "join":
        return withSeam(join(value, { ...place, depth: place.depth + 1 }), seams);
      case "piece":
        return pieceNode(value, place);
      case "unit":
        return unitNode(value, place);
      case "slab":
        return slabNode(value, place);
      case "cloth":
        return clothNode(value, place);
      case undefined:
        return isObject(value) ? undefined : report(place, { kind: "wrong-type", expected: "object" });
    }
  };
  const join = record<WrittenJoin>({
    kind: must(oneOf(["join"])),
    direction: must(oneOf(joinDirections)),
    seam: may(sizeOrNothing),
    pattern: may(name),
    parts: must(list(node, mostCells)),
    ...cell,
  });
  return node;
}

function withSeam(join: WrittenJoin | undefined, { seam, plainSeam }: DefaultSeams): JoinNode | undefined {
  if (join === undefined) return undefined;
  const plain = join.parts.every(({ kind }) => kind === "cloth");
  return { ...join, seam: join.seam ?? (plain ? plainSeam : seam) };
}
