import type { Fabric, Job, SizedKind, SizedPiece } from "../../src/engine/cloth/index.ts";
import {
  type JoinDirection,
  type LayoutNode,
  type LeafNode,
  outerSeams,
  type Quarter,
  type Seams,
  seamsOfPart,
} from "../../src/engine/layout/index.ts";
import {
  areaOf,
  cut,
  finished,
  inches,
  length,
  type Size,
  toCut,
  unitsPerInch,
} from "../../src/engine/length/index.ts";

/**
 * Random valid layouts of every kind of node, with the heap that they use up: slicing trees on the ruler's step, no
 * finished side under 2 in, plain seams where all parts are cloth, nested joins of one direction only where they
 * have another seam or a pattern. For tests and for looking at drawings; a plan of the solver's is another matter.
 */
export type Sample = { readonly layout: LayoutNode; readonly job: Job };

export type Wanted = {
  /** Finished, in inches. */
  readonly width: number;
  readonly height: number;
  /** About how long the sides of a cell are, in inches. */
  readonly cell: number;
  readonly fabrics: readonly Fabric[];
};

const mark = 8;
const smallest = 2 * mark;
const plainFabric = "plain";

export const plainCloth: Fabric = {
  id: plainFabric,
  name: "Unbleached cotton",
  colour: "#e4dccb",
  colours: [{ lab: { l: 88, a: 1, b: 10 }, share: 1 }],
};

export function sampleLayout(seed: number, wanted: Wanted): Sample {
  const heap: Heap = { random: randomFrom(seed), pieces: [], wanted };
  const rough = cutUp({ width: wanted.width * mark, height: wanted.height * mark }, heap);
  const layout = withSeams(rough);
  const dressed = dress(layout, outerSeams({ seam: inches(1, 4) }), heap);
  return { layout: dressed, job: jobFor(dressed, heap) };
}

/** Mulberry32: small, and the same everywhere. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Heap = { readonly random: () => number; readonly pieces: SizedPiece[]; readonly wanted: Wanted };

// Sizes in steps of the ruler while cutting up.
type Cell = { readonly width: number; readonly height: number };
type Rough = Cell &
  (
    | { kind: "leaf"; what: LeafNode["kind"]; set: string | null }
    | { kind: "join"; direction: JoinDirection; pattern?: string; parts: Rough[] }
  );

function cutUp(cell: Cell, heap: Heap): Rough {
  const { random, wanted } = heap;
  const aim = wanted.cell * mark * (0.6 + random());
  const across = cell.width > cell.height ? random() < 0.85 : random() < 0.15;
  const along = across ? cell.width : cell.height;
  if (along < 2 * smallest || Math.max(cell.width, cell.height) <= aim) return leafOrSet(cell, heap);
  const most = Math.min(6, Math.floor(along / smallest));
  const count = Math.max(2, Math.min(most, Math.round((along / aim) * random())));
  const sizes = divide(along, count, random);
  const allCloth = random() < 0.06;
  const parts = sizes.map((size) => {
    const part = across ? { ...cell, width: size } : { ...cell, height: size };
    return allCloth ? leaf(part, "cloth") : cutUp(part, heap);
  });
  return { kind: "join", direction: across ? "beside" : "below", parts, ...cell };
}

function leafOrSet(cell: Cell, heap: Heap): Rough {
  const side = 2 * mark;
  const fits =
    cell.width % side === 0 && cell.height % side === 0 && cell.width * cell.height >= 4 * side * side;
  if (fits && heap.random() < 0.5) return squares(cell, side, `set-${heap.random()}`);
  const roll = heap.random();
  const what = roll < 0.12 ? "cloth" : roll < 0.18 ? "slab" : roll < 0.26 ? "unit" : "piece";
  return leaf(cell, what);
}

function leaf(cell: Cell, what: LeafNode["kind"], set: string | null = null): Rough {
  return { kind: "leaf", what, set, ...cell };
}

function squares(cell: Cell, side: number, set: string): Rough {
  const square = (): Rough => leaf({ width: side, height: side }, "piece", set);
  const columns = cell.width / side;
  const row = (): Rough =>
    columns === 1
      ? square()
      : join("beside", { width: cell.width, height: side }, Array.from({ length: columns }, square));
  const rows = Array.from({ length: cell.height / side }, row);
  const [only] = rows;
  const whole = rows.length === 1 && only ? only : join("below", cell, rows);
  return whole.kind === "join" ? { ...whole, pattern: "squares" } : whole;
}

function join(direction: JoinDirection, cell: Cell, parts: Rough[]): Rough {
  return { kind: "join", direction, parts, ...cell };
}

function divide(total: number, count: number, random: () => number): number[] {
  const weights = Array.from({ length: count }, () => 0.3 + random());
  const spare = total - count * smallest;
  const sum = weights.reduce((a, b) => a + b, 0);
  const sizes = weights.map((weight) => smallest + Math.floor((spare * weight) / sum));
  const last = sizes.pop() ?? 0;
  return [...sizes, last + total - last - sizes.reduce((a, b) => a + b, 0)];
}

function size({ width, height }: Cell): Size<ReturnType<typeof finished>> {
  const units = unitsPerInch / mark;
  return { width: finished(length(width * units)), height: finished(length(height * units)) };
}

function withSeams(rough: Rough): LayoutNode {
  const cell = size(rough);
  if (rough.kind === "leaf") return bareLeaf(rough, cell);
  const { direction, pattern } = rough;
  const seam = inches(1, rough.parts.every((part) => part.kind === "leaf" && part.what === "cloth") ? 2 : 4);
  const parts = rough.parts.map(withSeams).flatMap((part) => {
    const isRun = part.kind === "join" && part.direction === direction && part.seam === seam && !part.pattern;
    return isRun ? part.parts : [part];
  });
  return { kind: "join", direction, seam, ...(pattern ? { pattern } : {}), ...cell, parts };
}

// The set a square belongs to waits in `piece` until the heap is made.
function bareLeaf(rough: Rough & { kind: "leaf" }, cell: ReturnType<typeof size>): LeafNode {
  switch (rough.what) {
    case "piece":
      return { kind: "piece", piece: rough.set ?? "", turned: false, ...cell };
    case "cloth":
      return { kind: "cloth", role: "plain", fabric: plainFabric, source: "buy", ...cell };
    case "slab":
      return { kind: "slab", ...cell };
    case "unit":
      return { kind: "unit", pattern: "", pieces: [], cloth: [], ...cell };
  }
}

function dress(node: LayoutNode, seams: Seams, heap: Heap): LayoutNode {
  switch (node.kind) {
    case "join":
      return { ...node, parts: node.parts.map((part, i) => dress(part, seamsOfPart(node, i, seams), heap)) };
    case "piece":
      return dressPiece(node, seams, heap);
    case "cloth":
      return dressCloth(node, heap);
    case "slab": {
      const scraps = [1, 2].map(() => newPiece("rectangle", { width: inches(2), height: inches(3) }, heap));
      const pieces = scraps.map((piece) => ({ piece, count: 1 }));
      return heap.random() < 0.5 ? { ...node, crumbs: "crumbs-1" } : { ...node, pieces };
    }
    case "unit":
      return dressUnit(node, heap);
  }
}

function dressPiece(node: LayoutNode & { kind: "piece" }, seams: Seams, heap: Heap): LayoutNode {
  const { random } = heap;
  const width = toCut(node.width, seams.left, seams.right);
  const height = toCut(node.height, seams.top, seams.bottom);
  const known = heap.pieces.findIndex((piece) => node.piece !== "" && piece.name === node.piece);
  const set = heap.pieces[known];
  if (set) {
    heap.pieces[known] = { ...set, count: set.count + 1 };
    return { ...node, piece: set.id };
  }
  const trim = random() < 0.3 ? inches(1, 8) : length(0);
  const turned = node.piece === "" && random() < 0.4;
  const laid = { width: length(width + trim), height: length(height + trim) };
  const asCut = turned ? { width: laid.height, height: laid.width } : laid;
  const isSewn = node.piece === "" && width === height && random() < 0.5;
  const kind = isSewn ? "half-square-triangle" : kindOf(laid);
  const piece = newPiece(kind, asCut, heap, node.piece);
  const quarter = isSewn ? { quarter: quarterTurn(random) } : {};
  const copy = kind === "strip" && random() < 0.3 ? { copy: 1 } : {};
  return { ...node, piece, turned, ...quarter, ...copy };
}

function kindOf({ width, height }: Size): SizedKind {
  if (width === height) return "square";
  return Math.max(width, height) >= 3.5 * Math.min(width, height) ? "strip" : "rectangle";
}

function dressCloth(node: LayoutNode & { kind: "cloth" }, heap: Heap): LayoutNode {
  const { random } = heap;
  const role = Math.min(node.width, node.height) > inches(6) ? "plain" : random() < 0.5 ? "spacer" : "coping";
  if (random() < 0.6) return { ...node, role };
  const fabric = pick(heap.wanted.fabrics, random).id;
  return { ...node, role, fabric, source: { piece: "length-1", copy: 1 + Math.floor(random() * 2) } };
}

function dressUnit(node: LayoutNode & { kind: "unit" }, heap: Heap): LayoutNode {
  const { random } = heap;
  const side = { width: inches(3), height: inches(3) };
  if (random() < 0.5) {
    const triangles = [1, 2].map(() => newPiece("triangle", side, heap));
    const pieces = triangles.map((piece) => ({ piece, count: 1 }));
    return { ...node, pattern: "half-square-triangle", pieces };
  }
  const pieces = [{ piece: newPiece("half-square-triangle", side, heap), count: 3 }];
  const rotations = [0, 1, 2].map(() => quarterTurn(random));
  const source = "buy" as const;
  const asCut = { width: cut(side.width), height: cut(side.height) };
  return {
    ...node,
    pattern: "pinwheel",
    rotations,
    pieces,
    cloth: [{ fabric: plainFabric, source, ...asCut, count: 1 }],
  };
}

function newPiece(kind: SizedKind, { width, height }: Size, heap: Heap, name = ""): string {
  const id = `${kind}-${heap.pieces.filter((piece) => piece.kind === kind).length + 1}`;
  heap.pieces.push({
    id,
    kind,
    name,
    width: cut(width),
    height: cut(height),
    count: 1,
    fabric: pick(heap.wanted.fabrics, heap.random).id,
    keep: kind === "strip" ? "cut" : "trim",
    use: "yes",
    direction: "none",
    grain: "straight",
    washed: null,
    cloth: "",
  });
  return id;
}

function jobFor(layout: LayoutNode, heap: Heap): Job {
  const edge = inches(1, 2);
  return {
    unit: "in",
    step: inches(1, mark),
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    top: null,
    back: { width: length(layout.width + edge), height: length(layout.height + edge) },
    time: "any",
    wishes: [],
    contrast: "mixed",
    floor: inches(5, 2),
    clothWidth: inches(42),
    plain: plainFabric,
    fabrics: [...heap.wanted.fabrics, plainCloth],
    pieces: [...heap.pieces, bagOfCrumbs(heap)],
  };
}

function bagOfCrumbs({ wanted, random }: Heap): Job["pieces"][number] {
  const facts = {
    count: 1,
    keep: "trim",
    use: "yes",
    direction: "none",
    grain: "unknown",
    washed: null,
  } as const;
  const fabric = pick(wanted.fabrics, random).id;
  return { id: "crumbs-1", kind: "crumbs", fabric, cloth: "", name: "", area: areaOf(1e9), ...facts };
}

function pick<T>(from: readonly T[], random: () => number): T {
  const item = from[Math.floor(random() * from.length)];
  if (item === undefined) throw new Error("a sample needs at least one fabric");
  return item;
}

const quarters: readonly Quarter[] = [0, 1, 2, 3];

function quarterTurn(random: () => number): Quarter {
  return pick(quarters, random);
}
