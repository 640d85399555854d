import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCloth, sampleLayout } from "../../test/generators/layouts.ts";
import { expectGolden } from "../../test/golden/golden.ts";
import type { Fabric, SizedPiece } from "../engine/cloth/index.ts";
import { type DrawnPlan, drawPlan, drawStep } from "../engine/drawing/index.ts";
import type { JoinNode, LayoutNode } from "../engine/layout/index.ts";
import { cut, finished, inches, length } from "../engine/length/index.ts";
import { type DrawingWords, svgOfDrawing } from "./svg.ts";

const words: DrawingWords = {
  title: "Pieced back, 33 × 42 in",
  description: "An insert of ten pieces across, above the middle, between two plain parts.",
  caption: ["An insert across. About 1 hour; 12 seams."],
  width: "33 in",
  height: "42 in",
  ruler: "12 in",
  seenFrom: "Seen from behind",
  cutOff: "Cut off after quilting",
  more: (count) => `and ${count} more`,
};

describe("the picture of a back", () => {
  it("looks as it did", () => {
    expectGolden("insert-across.svg", svgOfDrawing(drawPlan(insertAcross()), { words }));
  });

  it("looks as it did on a dark page, with the cloth's colours unchanged", () => {
    const light = svgOfDrawing(drawPlan(insertAcross()), { words });
    const dark = svgOfDrawing(drawPlan(insertAcross()), { words, theme: "dark" });
    expectGolden("insert-across-dark.svg", dark);
    // Without a colour it isn't cloth yet, and takes a tone of the page.
    expect(clothColours(dark).filter((fill) => fill !== "#6b665e")).toEqual(
      clothColours(light).filter((fill) => fill !== "#d8d3c8"),
    );
  });

  it("of a step shows its parts in cut size", () => {
    const svg = svgOfDrawing(drawStep(insertAcross(), "3"), { words: { title: "Unit 3" }, perInch: 20 });
    expectGolden("step.svg", svg);
  });

  it("is to scale: an inch is as long on every picture", () => {
    const small = svgOfDrawing(drawPlan(insertAcross()));
    const larger = svgOfDrawing(drawPlan(insertAcross()), { perInch: 20 });
    expect(numberOf(small, /<rect x="0" y="0" width="([\d.]+)"/)).toBe(330);
    expect(numberOf(larger, /<rect x="0" y="0" width="([\d.]+)"/)).toBe(660);
  });

  it("names itself for who can't see it, and needs no ids", () => {
    const svg = svgOfDrawing(drawPlan(insertAcross()), { words });
    expect(svg).toContain('role="img"');
    expect(svg).toContain("<title>Pieced back, 33 × 42 in</title>");
    expect(svg).toContain("<desc>An insert of ten pieces");
    expect(svg).not.toMatch(/\sid=/);
  });

  it("writes no words where none are given", () => {
    expect(svgOfDrawing(drawPlan(insertAcross()))).not.toContain("<text");
  });

  it("lists the fabrics by amount and says how many it left out", () => {
    const fabrics = Array.from({ length: 20 }, (_, index) =>
      fabricOf(`f${index}`, `Cloth ${index}`, 30 + index),
    );
    const layout = joined(
      "beside",
      fabrics.map(({ id }) => clothOf(id, 2, 40)),
    );
    const svg = svgOfDrawing(drawPlan({ ...insertAcross(), fabrics, layout, top: null }), { words });
    const texts = [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text);
    // The two at the edge run on into the allowance, so they are first; twelve others follow.
    expect(texts.slice(-2)).toEqual(["Cloth 12", "and 6 more"]);
  });
});

describe("any picture", () => {
  it("is well-formed, whatever her cloth is called, and the same each time", () => {
    const name = fc.string({ unit: "binary" });
    const seeds = fc.record({ seed: fc.nat(), name, title: name });
    fc.assert(
      fc.property(seeds, ({ seed, name, title }) => {
        const fabrics = [fabricOf("hers", name, 40), { ...plainCloth, colours: [] }];
        const { layout, job } = sampleLayout(seed, { width: 30, height: 20, cell: 6, fabrics });
        const said = { ...words, title, description: title, caption: [title] };
        const plan = { ...job, fabrics, layout };
        const svg = svgOfDrawing(drawPlan(plan), { words: said });
        expectWellFormed(svg);
        expect(svgOfDrawing(drawPlan(plan), { words: said })).toBe(svg);
      }),
      { numRuns: 60 },
    );
  });

  it("keeps a name that looks like markup as a name", () => {
    const fabrics = [fabricOf("hers", `<script>alert("&")</script>`, 40)];
    const { layout, job } = sampleLayout(1, { width: 30, height: 20, cell: 6, fabrics });
    const svg = svgOfDrawing(drawPlan({ ...job, fabrics, layout }), { words });
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;script&gt;alert(");
  });

  it("has numbers only, never NaN, and at most two decimals", () => {
    const { layout, job } = sampleLayout(4, { width: 61, height: 47, cell: 7, fabrics: [plainCloth] });
    const svg = svgOfDrawing(drawPlan({ ...job, layout }), { words });
    expect(svg).not.toMatch(/NaN|Infinity|undefined|\d\.\d{3}|e-\d/);
  });
});

/** 32½ × 41½ finished: an insert of a pinwheel, four squares, a sewn triangle, a slab and strips between plain parts. */
function insertAcross(): DrawnPlan {
  const squares = joined("below", [
    joined("beside", [pieceOf("square-1", 4, 4), pieceOf("square-2", 4, 4)]),
    joined("beside", [pieceOf("square-2", 4, 4), pieceOf("square-1", 4, 4)]),
  ]);
  const pinwheel: LayoutNode = {
    kind: "unit",
    pattern: "pinwheel",
    rotations: [1, 2, 0, 3],
    pieces: [{ piece: "half-square-triangle-1", count: 4 }],
    cloth: [],
    ...size(8, 8),
  };
  const sewnTriangle: LayoutNode = { ...pieceOf("half-square-triangle-2", 4, 4), quarter: 1 };
  const pair = joined("below", [sewnTriangle, pieceOf("square-1", 4, 4)]);
  const slab: LayoutNode = { kind: "slab", crumbs: "crumbs-1", ...size(6, 8) };
  const insert = joined("beside", [
    squares,
    pieceOf("strip-1", 2.5, 8),
    pinwheel,
    pair,
    slab,
    pieceOf("strip-2", 4, 8),
  ]);
  const spacer: LayoutNode = { ...clothOf("oat", 32.5, 2), role: "spacer" };
  const layout = joined("below", [
    clothOf("plain", 32.5, 9.5),
    spacer,
    insert,
    spacer,
    clothOf("plain", 32.5, 20),
  ]);
  return {
    unit: "in",
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    top: { width: inches(27), height: inches(36) },
    back: { width: inches(33), height: inches(42) },
    fabrics: [
      plainCloth,
      fabricOf("oat", "Oat", 70, 4, 22),
      fabricOf("teal", "Teal dots & rings", 42, -20, -8),
      fabricOf("rust", "Rust check, from the shirt that was never finished", 48, 32, 34),
      fabricOf("night", "Night", 18, 3, -14),
      { id: "nameless", name: "Still in the wash", colour: "", colours: [] },
    ],
    pieces: [
      heapPiece("square-1", "square", "teal"),
      heapPiece("square-2", "square", "rust"),
      { ...heapPiece("strip-1", "strip", "night"), direction: "stripe" },
      { ...heapPiece("strip-2", "strip", "nameless") },
      { ...heapPiece("half-square-triangle-1", "half-square-triangle", "rust") },
      { ...heapPiece("half-square-triangle-2", "half-square-triangle", "night") },
      { ...heapPiece("crumbs-1", "rectangle", "teal"), direction: "one-way" },
    ],
    layout,
  };
}

function heapPiece(id: string, kind: SizedPiece["kind"], fabric: string): SizedPiece {
  const side = cut(inches(9, 2));
  const marks = { count: 4, keep: "trim", use: "yes", direction: "none", grain: "straight" } as const;
  return { id, kind, fabric, width: side, height: side, washed: null, cloth: "", name: "", ...marks };
}

function fabricOf(id: string, name: string, ...[l, a = 0, b = 0]: [number, number?, number?]): Fabric {
  return { id, name, colour: "", colours: [{ lab: { l, a, b }, share: 1 }] };
}

function joined(direction: JoinNode["direction"], parts: LayoutNode[]): JoinNode {
  const [first] = parts;
  const total = (side: "width" | "height") => parts.reduce((sum, part) => sum + part[side], 0) / 8128;
  const across = (side: "width" | "height") => (first?.[side] ?? 0) / 8128;
  const cell =
    direction === "beside" ? size(total("width"), across("height")) : size(across("width"), total("height"));
  return { kind: "join", direction, seam: inches(1, 4), parts, ...cell };
}

function pieceOf(piece: string, width: number, height: number): LayoutNode & { kind: "piece" } {
  return { kind: "piece", piece, turned: false, ...size(width, height) };
}

function clothOf(fabric: string, width: number, height: number): LayoutNode & { kind: "cloth" } {
  return { kind: "cloth", role: "plain", fabric, source: "buy", ...size(width, height) };
}

function size(width: number, height: number) {
  return { width: finished(length(width * 8128)), height: finished(length(height * 8128)) };
}

function clothColours(svg: string): (string | undefined)[] {
  return [...svg.matchAll(/<(?:rect|path) [^>]*fill="(#[0-9a-f]{6})"/g)].map(([, fill]) => fill).slice(1);
}

function numberOf(text: string, pattern: RegExp): number {
  return Number(pattern.exec(text)?.[1]);
}

/** Enough of XML for what we write: tags nest, attributes are quoted, text holds no bare mark. */
function expectWellFormed(xml: string): void {
  const open: string[] = [];
  let at = 0;
  const tag = /<(\/?)([a-z]+)((?: [A-Za-z0-9-]+="[^"<]*")*)(\/?)>|([^<]+)/gy;
  while (at < xml.length) {
    tag.lastIndex = at;
    const found = tag.exec(xml);
    if (!found) throw new Error(`not XML at ${at}: ${xml.slice(at, at + 60)}`);
    const [token, closes, name = "", attributes = "", alone, text = ""] = found;
    expect(`${attributes}${text}`.replace(/&(amp|lt|gt|quot);/g, "")).not.toContain("&");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones XML has no place for
    expect(token).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/);
    if (closes) expect(open.pop()).toBe(name);
    else if (name && !alone) open.push(name);
    at += token.length;
  }
  expect(open).toEqual([]);
}
