import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../../test/generators/handMadePlan.ts";
import {
  asJoin,
  at,
  nodeAt,
  resized,
  seamMoved,
  seamMovedBy,
  withParts,
  withRow,
} from "../../../test/generators/mutations.ts";
import { validInput } from "../../../test/generators/validLayouts.ts";
import { cut, finished, inches, length, millimetres, toCut } from "../length/index.ts";
import {
  type CheckInput,
  checkLayout,
  deepestJoin,
  type LayoutNode,
  type LayoutProblem,
  type LeftLong,
  leavesOf,
  mostCells,
} from "./index.ts";

const plan: CheckInput = handMadePlan();
const kindsOf = (input: CheckInput) => checkLayout(input).map(({ kind }) => kind);

// Paths in the hand-made plan; its drawing stands beside it.
const insert = [0];
const block = [0, 0];
const oneWay = [0, 1];
const squares = [0, 2];
const firstStrip = [0, 3];
const made = [0, 5, 0];
const unit = [0, 5, 0, 0];
const sewnTriangle = [0, 5, 0, 1];
const spacer = [0, 5, 0, 2];
const slab = [0, 5, 1];
const plainRow = [1];
const fromLength = [1, 0];
const bought = [1, 1];

describe("a layout that keeps every rule", () => {
  it("has nothing held against it when it was made by hand", () => {
    expect(checkLayout(plan)).toEqual([]);
  });

  it.each(["in", "cm"] as const)("has nothing held against it, whatever its shape (%s)", (unit) => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        expect(checkLayout(validInput(seed, unit))).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });
});

const bolt = { use: "plain", fabric: "plain", width: inches(42), length: inches(30) };
const nothing = Number.NaN as unknown as ReturnType<typeof inches>;

type Mutation = readonly [
  name: string,
  mutate: (input: CheckInput) => CheckInput,
  expected: LayoutProblem["kind"],
];

const mutations: readonly Mutation[] = [
  // The tree
  ["a seam moved by one step", (p) => seamMoved(p, insert, 0), "piece-too-small"],
  ["a seam moved by one step the other way", (p) => seamMoved(p, insert, 0, -1), "not-whole"],
  [
    "a part one step wider than its place",
    (p) => at(p, block, (n) => resized(n, "width", inches(1, 8))),
    "parts-do-not-add-up",
  ],
  [
    "a part one step higher than its row",
    (p) => at(p, block, (n) => resized(n, "height", inches(1, 8))),
    "edges-not-equal",
  ],
  ["a part less", (p) => withParts(p, insert, (parts) => parts.slice(1)), "parts-do-not-add-up"],
  [
    "a part twice",
    (p) => withParts(p, insert, (parts) => [...parts.slice(0, 1), ...parts]),
    "parts-do-not-add-up",
  ],
  [
    "a join of one part",
    (p) =>
      at(p, block, (n) => ({
        ...sized(n),
        kind: "join",
        direction: "beside",
        seam: inches(1, 4),
        parts: [n],
      })),
    "too-few-parts",
  ],
  ["a join of nothing", (p) => withParts(p, squares, () => []), "too-few-parts"],
  [
    "a part left long by less than an inch",
    (p) => at(p, bought, (n) => leftLongBy(n, { width: inches(15, 16) })),
    "left-too-short",
  ],
  [
    "a piece left longer than it is",
    (p) => at(p, oneWay, (n) => leftLongBy(n, { height: inches(1) })),
    "piece-too-small",
  ],
  [
    "a strip left longer than its cells leave of it",
    (p) => at(p, firstStrip, (n) => leftLongBy(n, { height: inches(10) })),
    "copy-too-short",
  ],
  [
    "a length left longer than it is",
    (p) => at(p, fromLength, (n) => leftLongBy(n, { height: inches(22) })),
    "cannot-be-shown-to-fit",
  ],
  [
    "plain cloth left longer than what is bought",
    (p) => at(p, bought, (n) => leftLongBy(n, { height: inches(22) })),
    "bought-too-little",
  ],
  ["two sizes swapped", (p) => swappedSizes(p, block, oneWay), "piece-too-small"],
  [
    "a back an inch wider",
    (p) => ({ ...p, back: { ...p.back, width: inches(83, 2) } }),
    "layout-not-the-back",
  ],
  [
    "a wide seam between leftovers",
    (p) => at(p, insert, (n) => ({ ...asJoin(n), seam: inches(1, 2) })),
    "wrong-seam",
  ],
  [
    "a narrow seam between plain parts",
    (p) => at(p, plainRow, (n) => ({ ...asJoin(n), seam: inches(1, 4) })),
    "wrong-seam",
  ],
  [
    "a seam that is no length",
    (p) => at(p, plainRow, (n) => ({ ...asJoin(n), seam: nothing })),
    "wrong-seam",
  ],
  [
    "a row left in a row",
    (p) => withParts(p, insert, ([a, b, ...rest]) => (a && b ? [rowOf(a, b), ...rest] : [])),
    "join-not-flattened",
  ],
  [
    "a size of nothing",
    (p) => at(p, spacer, (n) => ({ ...n, width: finished(length(0)) })),
    "size-not-positive",
  ],
  [
    "a size that is no number",
    (p) => at(p, spacer, (n) => ({ ...n, width: finished(nothing) })),
    "size-not-positive",
  ],
  // Cells
  [
    "a seam off the step",
    (p) => seamMovedBy(p, { path: plainRow, first: 0, by: inches(-1, 64) }),
    "off-step",
  ],
  ["a strip of an inch and a half", (p) => seamMoved(p, insert, 3, -4), "under-smallest"],
  // Pieces
  [
    "a piece that is not in the table",
    (p) => at(p, block, (n) => ({ ...n, piece: "block-9" }) as LayoutNode),
    "unknown-piece",
  ],
  [
    "a one-way print turned",
    (p) => at(squareOff(p), oneWay, (n) => ({ ...n, turned: true }) as LayoutNode),
    "one-way-turned",
  ],
  ["a block trimmed", (p) => withRow(p, "block-1", bigger(1)), "not-whole"],
  ["a half-square triangle trimmed", (p) => withRow(p, "half-square-triangle-1", bigger(1)), "not-whole"],
  ["a piece left whole, trimmed", (p) => withRow(p, "rectangle-1", { keep: "whole" }), "not-whole"],
  [
    "more than half an inch trimmed",
    (p) => withRow(p, "rectangle-1", { width: cut(inches(9 * 8 + 1, 8)) }),
    "trimmed-too-much",
  ],
  ["a strip trimmed across", (p) => withRow(p, "strip-1", { width: cut(inches(3)) }), "trimmed-too-much"],
  [
    "a piece a step too narrow",
    (p) => withRow(p, "square-1", { width: cut(inches(43, 8)) }),
    "piece-too-small",
  ],
  [
    "a triangle too small for its rectangle",
    (p) => withRow(p, "rectangle-1", { kind: "triangle", width: cut(inches(17)), height: cut(inches(20)) }),
    "triangle-too-small",
  ],
  [
    "a piece kept back",
    (p) => at(p, block, (n) => ({ ...n, piece: "rectangle-2" }) as LayoutNode),
    "not-to-be-used",
  ],
  [
    "a piece to give away",
    (p) => at(p, block, (n) => ({ ...n, piece: "rectangle-3" }) as LayoutNode),
    "not-to-be-used",
  ],
  ["a length laid as a piece", (p) => withRow(p, "rectangle-1", { kind: "length" }), "length-as-piece"],
  [
    "crumbs laid as a piece",
    (p) => at(p, block, (n) => ({ ...n, piece: "crumbs-1" }) as LayoutNode),
    "crumbs-as-piece",
  ],
  ["a half-square triangle not square", (p) => seamMoved(p, made, 1, -1), "half-square-triangle-not-square"],
  [
    "a quarter turn of a block",
    (p) => at(p, block, (n) => ({ ...n, quarter: 1 }) as LayoutNode),
    "wrong-quarter",
  ],
  [
    "a fifth quarter",
    (p) => at(p, sewnTriangle, (n) => ({ ...n, quarter: 4 }) as unknown as LayoutNode),
    "wrong-quarter",
  ],
  // Counts
  ["one more than there are", (p) => withRow(p, "square-1", { count: 1 }), "used-too-often"],
  [
    "a piece twice",
    (p) => at(p, oneWay, (n) => ({ ...n, piece: "block-1" }) as LayoutNode),
    "used-too-often",
  ],
  [
    "one left over too many",
    (p) => ({ ...p, unused: [{ piece: "square-1", count: 2 }, ...(p.unused ?? []).slice(1)] }),
    "wrong-unused",
  ],
  ["one left over forgotten", (p) => ({ ...p, unused: (p.unused ?? []).slice(1) }), "wrong-unused"],
  [
    "a copy of a piece that may not be cut",
    (p) => withRow(p, "strip-1", { keep: "trim" }),
    "copy-of-uncut-piece",
  ],
  [
    "a copy that gives one cell",
    (p) => at(withRow(p, "strip-1", { count: 2 }), firstStrip, (n) => ({ ...n, copy: 2 }) as LayoutNode),
    "copy-gives-one-cell",
  ],
  [
    "a copy there is none of",
    (p) => at(p, firstStrip, (n) => ({ ...n, copy: 2 }) as LayoutNode),
    "copy-out-of-range",
  ],
  [
    "a copy beyond its length",
    (p) => withRow(p, "strip-1", { height: cut(inches(167, 8)) }),
    "copy-too-short",
  ],
  // Cloth
  [
    "cloth of no known fabric",
    (p) => at(p, bought, (n) => ({ ...n, fabric: "silk" }) as LayoutNode),
    "unknown-fabric",
  ],
  [
    "cloth from a leftover",
    (p) => at(p, fromLength, (n) => ({ ...n, source: { piece: "square-1", copy: 3 } }) as LayoutNode),
    "cloth-not-from-a-length",
  ],
  [
    "cloth from a length of another fabric",
    (p) => at(p, fromLength, (n) => ({ ...n, fabric: "plain" }) as LayoutNode),
    "cloth-of-another-fabric",
  ],
  [
    "cloth longer than its length",
    (p) => withRow(p, "length-1", { width: cut(inches(25)), height: cut(inches(25)) }),
    "cannot-be-shown-to-fit",
  ],
  ["a length kept back", (p) => withRow(p, "length-1", { use: "keep-back" }), "not-to-be-used"],
  ["a length left whole, cut", (p) => withRow(p, "length-1", { keep: "whole" }), "not-whole"],
  [
    "a one-way length turned to fit",
    (p) => withRow(p, "length-1", { width: cut(inches(21)), height: cut(inches(42)), direction: "one-way" }),
    "cannot-be-shown-to-fit",
  ],
  [
    "cloth wider than the bolt",
    (p) => ({ ...p, buy: [{ ...bolt, width: inches(15), length: inches(400) }] }),
    "cloth-too-wide",
  ],
  ["too little bought", (p) => ({ ...p, buy: [{ ...bolt, length: inches(15) }] }), "bought-too-little"],
  ["nothing bought", (p) => ({ ...p, buy: [] }), "cloth-not-bought"],
  ["binding bought, no cloth", (p) => ({ ...p, buy: [{ ...bolt, use: "binding" }] }), "cloth-not-bought"],
  // Units and slabs
  [
    "a unit of no known pattern",
    (p) => at(p, unit, (n) => ({ ...n, pattern: "whirl" }) as LayoutNode),
    "unknown-pattern",
  ],
  [
    "a unit of one triangle",
    (p) => at(p, unit, (n) => ({ ...n, pieces: [{ piece: "triangle-1", count: 1 }] }) as LayoutNode),
    "wrong-unit-parts",
  ],
  [
    "a unit of squares",
    (p) => at(p, unit, (n) => ({ ...n, pieces: [{ piece: "square-1", count: 2 }] }) as LayoutNode),
    "wrong-unit-parts",
  ],
  [
    "a unit of triangles a step too small",
    (p) => withRow(p, "triangle-1", bigger(-1, 5.875)),
    "wrong-unit-size",
  ],
  ["a unit of triangles far too large", (p) => withRow(p, "triangle-1", bigger(6, 5.875)), "wrong-unit-size"],
  ["a slab of nothing", (p) => at(p, slab, (n) => ({ kind: "slab", ...sized(n) })), "slab-of-nothing"],
  [
    "a slab of a block",
    (p) => at(p, slab, (n) => ({ kind: "slab", ...sized(n), crumbs: "block-1" })),
    "slab-not-from-crumbs",
  ],
  ["a slab larger than its crumbs", (p) => withRow(p, "crumbs-1", { area: 10 } as object), "slab-too-large"],
];

function sized({ width, height }: LayoutNode) {
  return { width, height };
}

function bigger(eighths: number, from?: number) {
  const size = (inch: number) => cut(length(inch * 8128 + inches(eighths, 8)));
  return from === undefined
    ? { width: size(10.5), height: size(10.5) }
    : { width: size(from), height: size(from) };
}

function rowOf(a: LayoutNode, b: LayoutNode): LayoutNode {
  const width = finished(length(a.width + b.width));
  return { kind: "join", direction: "beside", seam: inches(1, 4), width, height: a.height, parts: [a, b] };
}

function leftLongBy(node: LayoutNode, leftLong: LeftLong): LayoutNode {
  return node.kind === "piece" || node.kind === "cloth" ? { ...node, leftLong } : node;
}

function swappedSizes(input: CheckInput, one: readonly number[], other: readonly number[]): CheckInput {
  const [a, b] = [nodeAt(input.layout, one), nodeAt(input.layout, other)].map(sized);
  const half = at(input, one, (node) => ({ ...node, ...b }));
  return at(half, other, (node) => ({ ...node, ...a }));
}

/** The one-way piece made large enough either way round, so that only its direction speaks against turning it. */
function squareOff(input: CheckInput): CheckInput {
  return withRow(input, "rectangle-1", {
    width: cut(inches(85, 8)),
    height: cut(inches(85, 8)),
    keep: "cut",
  });
}

describe("a layout with one thing wrong", () => {
  it.each(mutations)("is refused for %s", (_, mutate, expected) => {
    expect(kindsOf(mutate(plan))).toContain(expected);
  });

  it("says where, which piece, what is needed and what there is", () => {
    const short = withRow(plan, "strip-1", { height: cut(inches(167, 8)) });
    expect(checkLayout(short)).toEqual([
      {
        kind: "copy-too-short",
        path: [0, 4],
        piece: "strip-1",
        copy: 1,
        needed: inches(21),
        has: inches(167, 8),
      },
    ]);
    expect(checkLayout(at(plan, block, (n) => resized(n, "height", inches(1, 8))))).toContainEqual({
      kind: "edges-not-equal",
      path: block,
      side: "height",
      expected: inches(10),
      actual: inches(81, 8),
    });
  });

  it("is refused wherever in a random layout it is", () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), (seed, choice) => {
        const input = validInput(seed);
        const leaves = leavesOf(input.layout, input);
        const leaf = leaves[choice % leaves.length];
        if (leaf === undefined || leaf.path.length === 0) return;
        const grown = kindsOf(at(input, leaf.path, (node) => resized(node, "width", input.step)));
        expect(grown.some((kind) => kind === "parts-do-not-add-up" || kind === "edges-not-equal")).toBe(true);
        const gone = withParts(input, leaf.path.slice(0, -1), (parts) =>
          parts.toSpliced(leaf.path.at(-1) ?? 0, 1),
        );
        expect(kindsOf(gone)).toContain("parts-do-not-add-up");
        const { node } = leaf;
        if (node.kind !== "piece") return;
        const used = input.pieces.find(({ id }) => id === node.piece)?.count ?? 0;
        const spare = input.unused?.find(({ piece }) => piece === node.piece)?.count ?? 0;
        expect(kindsOf(withRow(input, node.piece, { count: used - spare - 1 }))).toContain("used-too-often");
      }),
      { numRuns: 300 },
    );
  });
});

describe("the smallest finished size", () => {
  const floor = (half: number): CheckInput => ({ ...plan, floor: inches(half, 2) });

  it("is the floor less half an inch, and never under one inch", () => {
    expect(kindsOf(floor(5))).toEqual([]);
    // Floor 3 in: 2 1/2 in. The two strips and nothing else are narrower.
    expect(checkLayout(floor(6))).toEqual(
      [3, 4].map((part) => ({
        kind: "under-smallest",
        path: [0, part],
        piece: "strip-1",
        side: "width",
        size: inches(2),
        smallest: inches(5, 2),
      })),
    );
  });

  it("is one inch in a set of like pieces", () => {
    // Floor 6 in: 5 1/2 in. The two squares of 5 in stand in a set.
    const refused = checkLayout(floor(12)).map(({ path }) => path[1]);
    expect(refused).not.toContain(2);
    expect(refused).toContain(3);
  });

  it("is one inch in the outer ring for plain cloth and for pieces of the edge", () => {
    const wide = floor(60);
    const paths = (input: CheckInput) =>
      checkLayout(input).flatMap((problem) =>
        problem.kind === "under-smallest" ? [problem.path.join(".")] : [],
      );
    expect(paths(wide)).toContain("0.0");
    expect(paths(wide)).not.toContain("1.0");
    expect(paths(withRow(wide, "block-1", { use: "edge" }))).not.toContain("0.0");
    const inside = withParts(wide, [0, 5], (parts) => parts.toReversed());
    expect(paths(withRow(inside, "half-square-triangle-1", { use: "edge" }))).toContain("0.5.1.1");
  });

  it("is what a piece at the floor shows where seams are 0.75 cm", () => {
    // 6.3 cm cut shows 4.8 cm: a strip at the floor is not under it, one a millimetre narrower is.
    const rows = (narrow: number): LayoutProblem["kind"][] => kindsOf(inCentimetres(narrow));
    expect(rows(48)).toEqual([]);
    expect(rows(47)).toEqual(["under-smallest"]);
  });
});

function inCentimetres(narrow: number): CheckInput {
  const high = finished(millimetres(100));
  const cells = [narrow, 200].map((width) => ({ width: finished(millimetres(width)), height: high }));
  const parts = cells.map(
    (cell, n) => ({ kind: "piece", piece: `odd-${n}`, turned: false, ...cell }) as const,
  );
  const width = finished(millimetres(200 + narrow));
  const seam = millimetres(7.5);
  const facts = { kind: "odd", count: 1, fabric: "f", keep: "trim", use: "yes", direction: "none" } as const;
  return {
    layout: { kind: "join", direction: "beside", seam, width, height: high, parts },
    back: { width: millimetres(215 + narrow), height: millimetres(115) },
    step: millimetres(1),
    seam,
    plainSeam: millimetres(12.5),
    floor: millimetres(63),
    fabrics: [{ id: "f" }],
    buy: [],
    pieces: cells.map((cell, n) => ({
      ...facts,
      id: `odd-${n}`,
      width: toCut(cell.width, seam),
      height: toCut(high, seam),
    })),
  };
}

describe("a whole piece of a size the ruler does not show", () => {
  const odd = inches(1, 64);
  const whole = withRow(plan, "block-1", { width: cut(length(inches(21, 2) + odd)) });
  const givenWay = seamMovedBy(whole, { path: insert, first: 0, by: odd });

  it("takes its size, and only the cloth beside it gives way", () => {
    const offStep = checkLayout(givenWay).filter(({ kind }) => kind === "off-step");
    expect(offStep).toEqual([
      {
        kind: "off-step",
        path: oneWay,
        piece: "rectangle-1",
        side: "width",
        size: 8 * 8128 - 127,
        step: 1016,
      },
    ]);
  });

  it("leaves the spacer beside it in peace", () => {
    const spaced = at(givenWay, oneWay, (node) => ({
      ...sized(node),
      kind: "cloth",
      role: "spacer",
      fabric: "plain",
      source: "buy",
    }));
    expect(kindsOf(spaced)).not.toContain("off-step");
  });
});

describe("a file made to break it", () => {
  it("is answered, never thrown at", () => {
    const deep = { ...plan, layout: nested(deepestJoin * 4) };
    expect(kindsOf(deep)).toContain("too-deep");
    const cells = new Array<LayoutNode>(mostCells * 3).fill(nodeAt(plan.layout, bought));
    expect(kindsOf(withParts(plan, insert, () => cells))).toContain("too-many-cells");
    expect(kindsOf({ ...plan, pieces: [], fabrics: [], buy: [] })).toContain("unknown-piece");
  });

  it("looks at thousands of cells of one length in no time to speak of", () => {
    const cell = nodeAt(plan.layout, fromLength);
    const many = withParts(plan, plainRow, () => new Array<LayoutNode>(mostCells / 2).fill(cell));
    expect(kindsOf(many)).toContain("cannot-be-shown-to-fit");
  });
});

function nested(depth: number): LayoutNode {
  let node = nodeAt(plan.layout, bought);
  for (let level = 0; level < depth; level += 1) {
    node = { ...sized(node), kind: "join", direction: "beside", seam: inches(1, 4), parts: [node] };
  }
  return node;
}
