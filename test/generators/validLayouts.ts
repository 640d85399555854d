import {
  type CheckedPiece,
  type CheckInput,
  type ClothNode,
  type JoinDirection,
  type LayoutNode,
  leavesOf,
  type PieceNode,
  type PlacedLeaf,
} from "../../src/engine/layout/index.ts";
import {
  areaOf,
  cut,
  type Finished,
  finished,
  inches,
  length,
  millimetres,
  type Size,
} from "../../src/engine/length/index.ts";
import { randomFrom } from "./layouts.ts";

/**
 * Random layouts that keep every rule of the format, with a heap made to measure: nested joins with seams and
 * patterns of their own, trims up to what may be, cut strips and lengths, triangles, units, slabs, bought cloth.
 */
export function validInput(seed: number, unit: "in" | "cm" = "in"): CheckInput {
  const random = randomFrom(seed);
  const rules = unit === "in" ? inchRules : centimetreRules;
  const across = 100 + Math.floor(random() * 400);
  const down = 100 + Math.floor(random() * 400);
  const maker: Maker = { random, rules, pieces: [], used: new Map() };
  const bare = grow({ width: across, height: down }, null, maker);
  const dressed = dress(bare, maker);
  return {
    layout: dressed,
    back: {
      width: length(dressed.width + 2 * rules.seam),
      height: length(dressed.height + 2 * rules.seam),
    },
    ...rules,
    floor: inches(5, 2),
    pieces: maker.pieces,
    fabrics: [{ id: "plain" }, { id: "print" }],
    buy: buyFor(dressed, rules),
    unused: maker.pieces.flatMap(({ id, count }) => {
      const left = count - (maker.used.get(id) ?? 0);
      return left > 0 ? [{ piece: id, count: left }] : [];
    }),
  };
}

const inchRules = { step: inches(1, 8), seam: inches(1, 4), plainSeam: inches(1, 2) };
const centimetreRules = { step: millimetres(1), seam: millimetres(7.5), plainSeam: millimetres(12.5) };
type Rules = typeof inchRules;

type Maker = {
  readonly random: () => number;
  readonly rules: Rules;
  readonly pieces: CheckedPiece[];
  readonly used: Map<string, number>;
};

// While it grows, sizes are whole steps; 24 of them are over 2 in whatever the unit.
type Steps = { readonly width: number; readonly height: number };

function least({ rules }: Maker): number {
  return Math.ceil(inches(2) / rules.step);
}

function grow(cell: Steps, last: JoinDirection | null, maker: Maker): LayoutNode {
  const { random } = maker;
  const direction: JoinDirection =
    last === null ? (random() < 0.5 ? "beside" : "below") : last === "beside" ? "below" : "beside";
  const along = direction === "beside" ? cell.width : cell.height;
  const most = Math.min(4, Math.floor(along / least(maker)));
  if (most < 2 || (last !== null && random() < 0.25)) return bareLeaf(cell, last, maker);
  const parts = divide(along, 2 + Math.floor(random() * (most - 1)), maker).map((size) => {
    const part = direction === "beside" ? { ...cell, width: size } : { ...cell, height: size };
    return random() < 0.5 ? bareLeaf(part, direction, maker) : grow(part, direction, maker);
  });
  return joined(direction, parts, maker.rules);
}

function joined(direction: JoinDirection, parts: readonly LayoutNode[], rules: Rules): LayoutNode {
  const add = (side: "width" | "height") => parts.reduce((sum, part) => sum + part[side], 0);
  const [first] = parts;
  if (first === undefined) throw new Error("a join has parts");
  return {
    kind: "join",
    direction,
    seam: parts.every(({ kind }) => kind === "cloth") ? rules.plainSeam : rules.seam,
    width: direction === "beside" ? finished(length(add("width"))) : first.width,
    height: direction === "beside" ? first.height : finished(length(add("height"))),
    parts,
  };
}

function divide(total: number, count: number, maker: Maker): number[] {
  const sizes: number[] = [];
  let left = total;
  for (let rest = count - 1; rest > 0; rest -= 1) {
    const spare = left - (rest + 1) * least(maker);
    const size = least(maker) + Math.floor((maker.random() * spare) / rest);
    sizes.push(size);
    left -= size;
  }
  return [...sizes, left];
}

function bareLeaf(cell: Steps, within: JoinDirection | null, maker: Maker): LayoutNode {
  const { random, rules } = maker;
  const size = sizeOf(cell, rules);
  const roll = random();
  if (roll < 0.15 && within !== null) return plainPair(cell, within, maker);
  if (roll < 0.3) return cloth(size);
  if (roll < 0.4 && within !== null) return likePieces(cell, within, maker);
  if (roll < 0.45) return { kind: "slab", ...size };
  if (roll < 0.8 && cell.width === cell.height)
    return { kind: "unit", pattern: "", pieces: [], cloth: [], ...size };
  return piece(size);
}

function sizeOf({ width, height }: Steps, { step }: Rules): Size<Finished> {
  return { width: finished(length(width * step)), height: finished(length(height * step)) };
}

function cloth(size: Size<Finished>): ClothNode {
  return { kind: "cloth", role: "plain", fabric: "plain", source: "buy", ...size };
}

function piece(size: Size<Finished>): PieceNode {
  return { kind: "piece", piece: "", turned: false, ...size };
}

/** Two plain parts in a join of the same direction: it stays a join of its own, by its wider seam. */
function plainPair(cell: Steps, direction: JoinDirection, maker: Maker): LayoutNode {
  const side = direction === "beside" ? "width" : "height";
  if (cell[side] < 2 * least(maker)) return cloth(sizeOf(cell, maker.rules));
  const parts = divide(cell[side], 2, maker).map((size) =>
    cloth(sizeOf({ ...cell, [side]: size }, maker.rules)),
  );
  return joined(direction, parts, maker.rules);
}

/** A row of like pieces, down to 1 in each, in a join of the same direction. */
function likePieces(cell: Steps, direction: JoinDirection, maker: Maker): LayoutNode {
  const side = direction === "beside" ? "width" : "height";
  const count = [5, 4, 3, 2].find(
    (n) => cell[side] % n === 0 && (cell[side] / n) * maker.rules.step >= inches(1),
  );
  if (count === undefined) return piece(sizeOf(cell, maker.rules));
  const part = piece(sizeOf({ ...cell, [side]: cell[side] / count }, maker.rules));
  const join = joined(direction, new Array(count).fill(part), maker.rules);
  return join.kind === "join" ? { ...join, pattern: "strip-set" } : join;
}

// ---- The heap, made to measure

function dress(bare: LayoutNode, maker: Maker): LayoutNode {
  const strips: PlacedLeaf[] = [];
  const lengths: PlacedLeaf[] = [];
  const leaves = leavesOf(bare, maker.rules);
  const ready = new Map<string, LayoutNode>();
  for (const leaf of leaves) {
    const roll = maker.random();
    if (leaf.node.kind === "piece" && roll < 0.3) strips.push(leaf);
    else if (leaf.node.kind === "cloth" && roll < 0.6) lengths.push(leaf);
    else ready.set(keyOf(leaf), dressLeaf(leaf, maker));
  }
  shareLengths(lengths, maker, ready);
  shareStrips(strips, maker, ready);
  return exchange(bare, [], ready);
}

function exchange(
  node: LayoutNode,
  path: readonly number[],
  ready: ReadonlyMap<string, LayoutNode>,
): LayoutNode {
  if (node.kind !== "join") return ready.get(path.join(".")) ?? node;
  return { ...node, parts: node.parts.map((part, index) => exchange(part, [...path, index], ready)) };
}

function keyOf({ path }: PlacedLeaf): string {
  return path.join(".");
}

function dressLeaf(leaf: PlacedLeaf, maker: Maker): LayoutNode {
  const { node } = leaf;
  switch (node.kind) {
    case "piece":
      return dressPiece(leaf, node, maker);
    case "cloth":
      return node;
    case "slab": {
      const area = areaOf(node.width * node.height * 2);
      return { ...node, crumbs: addPiece({ kind: "crumbs", area }, 1, maker) };
    }
    case "unit":
      return { ...node, ...unitFor(node.width, maker) };
  }
}

function dressPiece(leaf: PlacedLeaf, node: PieceNode, maker: Maker): LayoutNode {
  const { random } = maker;
  const [width, height] = [leaf.cutWidth, leaf.cutHeight];
  const turned = random() < 0.4;
  const laid = (w: number, h: number) => ({
    width: cut(length(turned ? h : w)),
    height: cut(length(turned ? w : h)),
  });
  const trimmed = laid(width + trim(width, random), height + trim(height, random));
  const direction = turned ? ("stripe" as const) : ("one-way" as const);
  const choices: readonly (() => Made)[] = [
    () => ({ kind: "rectangle", ...trimmed, direction }),
    () => ({ kind: "odd", ...trimmed }),
    () => ({ kind: "block", keep: "whole", ...laid(width, height) }),
    () => ({ kind: "part-block", keep: "trim", ...trimmed }),
    () => ({ kind: "triangle", ...laid(2 * width, 2 * height) }),
    () => ({ kind: "strip", ...(width > height ? laid(width * 2, height) : laid(width, height * 2)) }),
    () => ({
      kind: "rectangle",
      keep: "cut",
      ...(width > height ? laid(3 * width, height) : laid(width, 3 * height)),
    }),
  ];
  if (width === height && random() < 0.5) return { ...node, ...halfSquare(width, maker) };
  const made = choices[Math.floor(random() * choices.length)]?.() ?? { kind: "odd", ...trimmed };
  return { ...node, turned, piece: addPiece(made, 1, maker) };
}

function trim(side: number, random: () => number): number {
  return Math.floor(random() * (Math.min(inches(1, 2), Math.floor(side / 10)) + 1));
}

function halfSquare(side: number, maker: Maker): Pick<PieceNode, "piece" | "quarter"> {
  const size = { width: cut(length(side)), height: cut(length(side)) };
  const quarter = ([0, 1, 2, 3] as const)[Math.floor(maker.random() * 4)] ?? 0;
  return { piece: addPiece({ kind: "half-square-triangle", keep: "whole", ...size }, 1, maker), quarter };
}

/** Formulas of the right isosceles triangle, solved for the leg. */
function unitFor(side: number, maker: Maker): Pick<LayoutNode & { kind: "unit" }, "pattern" | "pieces"> {
  const { seam, step } = maker.rules;
  const slack = Math.floor(maker.random() * step);
  const roll = maker.random();
  const square = (leg: number) => ({ width: cut(length(leg)), height: cut(length(leg)) });
  if (roll < 0.4) {
    const leg = Math.ceil(side + seam * (2 + Math.SQRT2)) + slack;
    const triangle = addPiece({ kind: "triangle", ...square(leg) }, 2, maker);
    return { pattern: "half-square-triangle", pieces: [{ piece: triangle, count: 2 }] };
  }
  if (roll < 0.7) {
    const leg = Math.ceil((side + 2 * seam * (1 + Math.SQRT2)) / Math.SQRT2);
    const triangle = addPiece({ kind: "triangle", ...square(leg) }, 4, maker);
    return { pattern: "hourglass", pieces: [{ piece: triangle, count: 4 }] };
  }
  const sewn = side / 2 + 2 * seam;
  const quarter = addPiece({ kind: "half-square-triangle", keep: "whole", ...square(sewn) }, 4, maker);
  return { pattern: "pinwheel", pieces: [{ piece: quarter, count: 4 }] };
}

function shareStrips(leaves: readonly PlacedLeaf[], maker: Maker, ready: Map<string, LayoutNode>): void {
  for (const height of new Set(leaves.map(({ cutHeight }) => cutHeight))) {
    const group = leaves.filter(({ cutHeight }) => cutHeight === height);
    const long = group.reduce((sum, leaf) => sum + leaf.cutWidth, 0);
    if (group.length < 2 || long < height) {
      for (const leaf of group) ready.set(keyOf(leaf), dressLeaf(leaf, maker));
      continue;
    }
    const turned = maker.random() < 0.5;
    const size = turned
      ? { width: cut(height), height: cut(length(long)) }
      : { width: cut(length(long)), height: cut(height) };
    const strip = addPiece({ kind: "strip", keep: "cut", ...size }, 1, maker);
    for (const leaf of group) {
      if (leaf.node.kind === "piece") ready.set(keyOf(leaf), { ...leaf.node, piece: strip, turned, copy: 1 });
    }
  }
}

/** Two cells from each copy of a length, one above the other. */
function shareLengths(leaves: readonly PlacedLeaf[], maker: Maker, ready: Map<string, LayoutNode>): void {
  for (let at = 0; at < leaves.length; at += 2) {
    const pair = leaves.slice(at, at + 2);
    const size = {
      width: cut(length(Math.max(...pair.map(({ cutWidth }) => cutWidth)))),
      height: cut(length(pair.reduce((sum, { cutHeight }) => sum + cutHeight, 0))),
    };
    const id = addPiece({ kind: "length", keep: "cut", ...size }, 1, maker);
    for (const leaf of pair) {
      if (leaf.node.kind !== "cloth") continue;
      ready.set(keyOf(leaf), { ...leaf.node, fabric: "print", source: { piece: id, copy: 1 } });
    }
  }
}

type Made = Partial<CheckedPiece> & Pick<CheckedPiece, "kind">;

function addPiece(made: Made, used: number, maker: Maker): string {
  const same = maker.pieces.filter(({ kind }) => kind === made.kind).length;
  const id = `${made.kind}-${same + 1}`;
  const spare = maker.random() < 0.3 ? 1 : 0;
  const row = {
    id,
    fabric: "print",
    keep: "trim",
    use: "yes",
    direction: "none",
    ...made,
    count: used + spare,
  };
  maker.pieces.push(row as CheckedPiece);
  maker.used.set(id, used);
  return id;
}

/** One bolt, as wide as it must be and long enough for all cells one after another. */
function buyFor(layout: LayoutNode, rules: Rules): CheckInput["buy"] {
  const cells = leavesOf(layout, rules).filter(({ node }) => node.kind === "cloth" && node.source === "buy");
  if (cells.length === 0) return [];
  const short = cells.map(({ cutWidth, cutHeight }) => Math.min(cutWidth, cutHeight));
  const long = cells.map(({ cutWidth, cutHeight }) => Math.max(cutWidth, cutHeight));
  const row = {
    width: length(Math.max(...short)),
    length: length(long.reduce((sum, next) => sum + next, 0)),
  };
  return [{ use: "plain", fabric: "plain", ...row }];
}
